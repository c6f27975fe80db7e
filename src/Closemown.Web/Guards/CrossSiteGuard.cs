using Closemown.Entries;

namespace Closemown.Web;

/// <summary>Refuses what another site's page makes a browser send.</summary>
/// <remarks>
/// Sec-Fetch-Site (Fetch Metadata, W3C) is set by the browser and cannot be set by a page; where it is absent, Origin must be this server's own. A program that
/// is no browser sends neither, and is let through: nothing is done on the strength of a cookie that it has not itself been given.
/// </remarks>
internal static class CrossSiteGuard
{
    public static Task Invoke(HttpContext http, RequestDelegate next)
    {
        var allowed = IsReading(http.Request) ? MayRead(http.Request) : SameOrigin(http.Request) ?? true;
        return allowed
            ? next(http)
            : http.Refuse(StatusCodes.Status403Forbidden, Refusal);
    }

    /// <summary>Said of what another site's page sent.</summary>
    public static EntryFault Refusal { get; } = new("cross-site", "", "A page of another site sent this.", "Open this server's own page, and do it there.");

    /// <summary>Whether a browser says the request comes from this server's own page; null where none says anything.</summary>
    public static bool? SameOrigin(HttpRequest request)
    {
        var site = request.Headers["Sec-Fetch-Site"].ToString();
        var origin = request.Headers.Origin.ToString();
        if (site.Length == 0 && origin.Length == 0) return null;
        if (site.Length > 0 && site is not ("same-origin" or "none")) return false;
        return origin.Length == 0 || origin.Equals($"{request.Scheme}://{request.Host.Value}", StringComparison.OrdinalIgnoreCase);
    }

    private static bool IsReading(HttpRequest request) => HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method) || HttpMethods.IsOptions(request.Method);

    /// <summary>Another site may link here; it may not fetch, embed or time anything.</summary>
    private static bool MayRead(HttpRequest request) =>
        request.Headers["Sec-Fetch-Site"].ToString() is "" or "same-origin" or "none" || request.Headers["Sec-Fetch-Mode"] == "navigate" && request.Headers["Sec-Fetch-Dest"] == "document";
}
