using Closemown.Book;
using Closemown.Entries;
using Closemown.Pipe;

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
                : Unreadable);
        }
        catch (IOException e) when (e.InnerException is OverflowException && !http.Response.HasStarted)
        {
            // A chunk that says it is larger than any number held here.
            await http.Refuse(StatusCodes.Status400BadRequest, Unreadable);
        }
        catch (BookException e) when (!http.Response.HasStarted)
        {
            await Show(http, e, StatusCodes.Status503ServiceUnavailable, "The book cannot be used", new("book", "", e.Message, e.Remedy));
        }
        catch (IOException e) when (!http.Response.HasStarted)
        {
            await Show(http, e, StatusCodes.Status503ServiceUnavailable, "A file cannot be used", Files);
        }
        catch (Exception e) when (!http.Response.HasStarted)
        {
            await Show(http, e, StatusCodes.Status500InternalServerError, "A fault of the program", BugFault.Of(Asked(http)));
        }
    }

    private static EntryFault Unreadable { get; } = new(FaultCodes.BadValue, "", "The request cannot be read.", "See /openapi.json for what is taken.");

    private static EntryFault Files { get; } =
        new("fault", "", "This server cannot read or write a file that it needs.", "Try again; if it comes again, start the server anew with --log and look there.");

    private static Task Show(HttpContext http, Exception fault, int status, string heading, EntryFault said)
    {
        Log(http).LogError("{Bug}", BugFault.Trace(fault));
        http.Response.Clear();
        return TroublePage.Show(http, status, heading, said);
    }

    /// <summary>The endpoint's own pattern, never what was typed into the address.</summary>
    private static string Asked(HttpContext http) => (http.GetEndpoint() as RouteEndpoint)?.RoutePattern.RawText is { Length: > 0 } pattern
        ? pattern.StartsWith('/') ? pattern : "/" + pattern
        : "a request";

    private static ILogger Log(HttpContext http) => http.RequestServices.GetRequiredService<ILoggerFactory>().CreateLogger("Closemown");
}
