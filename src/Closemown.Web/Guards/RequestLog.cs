using System.Diagnostics;

namespace Closemown.Web;

/// <summary>A line for each request: what was asked of which endpoint, what came of it, how long it took.</summary>
/// <remarks>Names the endpoint's pattern, never the path, the query, a header or a body: these may hold what a person typed, a code or a position.</remarks>
internal static class RequestLog
{
    public static void UseRequestLog(this IApplicationBuilder app)
    {
        var log = app.ApplicationServices.GetRequiredService<ILoggerFactory>().CreateLogger("Closemown.Request");
        app.Use(async (http, next) =>
        {
            var start = Stopwatch.GetTimestamp();
            try
            {
                await next(http);
            }
            finally
            {
                var pattern = (http.GetEndpoint() as RouteEndpoint)?.RoutePattern.RawText ?? "none";
                log.LogInformation("{Method} {Endpoint} {Status} in {Milliseconds} ms through {Door}", Known(http.Request.Method), pattern, http.Response.StatusCode, Math.Round(Stopwatch.GetElapsedTime(start).TotalMilliseconds, 1), http.Door());
            }
        });
    }

    /// <summary>A method is a word that a visitor may choose.</summary>
    private static string Known(string method) => method is "GET" or "HEAD" or "POST" or "OPTIONS" or "PUT" or "DELETE" or "PATCH" ? method : "other";
}
