namespace Closemown.Web;

/// <summary>What a request that changes something must say it carries.</summary>
/// <remarks>
/// A form of another site can send three types only (urlencoded, multipart, text/plain). The JSON types it cannot send without asking first, which is never
/// granted. Plain text is therefore taken only with a header that no form can send, or from this server's own page.
/// </remarks>
internal static class ContentGuard
{
    /// <summary>The header, with any value.</summary>
    public const string Header = "X-Closemown";

    public static Task Invoke(HttpContext http, RequestDelegate next)
    {
        if (http.GetEndpoint()?.Metadata.GetMetadata<ForPrograms>() is null || !HttpMethods.IsPost(http.Request.Method)) return next(http);
        var type = (http.Request.ContentType ?? "").Split(';')[0].Trim().ToLowerInvariant();
        var taken = http.Request.Path == "/entries"
            ? type is "application/jsonl" or "application/x-ndjson" || (type == "text/plain" && (http.Request.Headers.ContainsKey(Header) || CrossSiteGuard.SameOrigin(http.Request) == true))
            : type == "application/json";
        return taken ? next(http) : http.Refuse(StatusCodes.Status415UnsupportedMediaType, http.Request.Path == "/entries"
            ? new("wrong-type", "Content-Type", "Entries come as JSON Lines.", $"Say Content-Type: application/jsonl (or application/x-ndjson; or text/plain with a header {ContentGuard.Header}: 1).")
            : new("wrong-type", "Content-Type", "A question comes as JSON.", "Say Content-Type: application/json."));
    }
}
