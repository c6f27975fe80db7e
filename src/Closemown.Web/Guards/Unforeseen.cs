using Closemown.Book;
using Closemown.Entries;

namespace Closemown.Web;

/// <summary>What went wrong, said in the one shape; what exactly goes to the log.</summary>
internal static class Unforeseen
{
    public static async Task Invoke(HttpContext http, RequestDelegate next)
    {
        try
        {
            await next(http);
        }
        catch (OperationCanceledException) when (http.RequestAborted.IsCancellationRequested)
        {
            // Nobody reads the answer any more.
        }
        catch (BadHttpRequestException e) when (!http.Response.HasStarted)
        {
            await http.Refuse(e.StatusCode, e.StatusCode == StatusCodes.Status413PayloadTooLarge
                ? new("too-large", "", "The request is larger than this server takes.", "Send it in parts; the setting is requestBytes.")
                : new(FaultCodes.BadValue, "", "The request cannot be read.", "See /openapi.json for what is taken."));
        }
        catch (Exception e) when (!http.Response.HasStarted)
        {
            Log(http).LogError("{Kind} {Where}", e.GetType().Name, e.StackTrace?.Split('\n').FirstOrDefault(l => l.Contains("Closemown", StringComparison.Ordinal))?.Trim());
            http.Response.Clear();
            await http.Refuse(e is BookException or IOException ? StatusCodes.Status503ServiceUnavailable : StatusCodes.Status500InternalServerError,
                e is BookException b ? new("book", "", b.Message, b.Remedy) : new("fault", "", "This server met a fault of its own.", "Try again; if it comes again, start the server anew with --log and look there."));
        }
    }

    private static ILogger Log(HttpContext http) => http.RequestServices.GetRequiredService<ILoggerFactory>().CreateLogger("Closemown");
}
