using Closemown.Entries;

namespace Closemown.Web;

/// <summary>Says what it is where nothing is found, instead of an empty answer.</summary>
internal static class Nowhere
{
    public static async Task Invoke(HttpContext http, RequestDelegate next)
    {
        await next(http);
        if (http.Response.HasStarted || http.Response.ContentType is not null || http.Response.ContentLength is > 0) return;
        if (http.Response.StatusCode == StatusCodes.Status404NotFound) await TroublePage.Show(http, http.Response.StatusCode, "Nothing here", NotFound);
        else if (http.Response.StatusCode == StatusCodes.Status405MethodNotAllowed) await TroublePage.Show(http, http.Response.StatusCode, "Not done this way", NotThisWay);
    }

    private static EntryFault NotFound { get; } =
        new("not-found", "", "This server has nothing at that address.", "Go on from / or, for programs, from /openapi.json.");

    private static EntryFault NotThisWay { get; } =
        new("not-allowed", "", "This address does not take that kind of request.", "See /openapi.json for what it takes; pages take GET.");
}
