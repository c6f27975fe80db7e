namespace Closemown.Web;

/// <summary>Answers HEAD wherever GET is answered: with the same status and headers, and no body.</summary>
internal static class HeadGuard
{
    public static async Task Invoke(HttpContext http, RequestDelegate next)
    {
        if (!HttpMethods.IsHead(http.Request.Method))
        {
            await next(http);
            return;
        }
        // The server itself writes no body to a request that came as HEAD, whatever it is called on its way through here.
        http.Features.Set(new HeadMark());
        http.Request.Method = HttpMethods.Get;
        try
        {
            await next(http);
        }
        finally
        {
            http.Request.Method = HttpMethods.Head;
        }
    }

    /// <summary>Whether only the head of the answer is asked for: of an answer without end there is nothing more to make.</summary>
    public static bool AsksForHead(HttpContext http) => http.Features.Get<HeadMark>() is not null;

    private sealed record HeadMark;
}
