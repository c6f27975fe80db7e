using System.Globalization;
using System.Threading.RateLimiting;
using Closemown.Serving;

namespace Closemown.Web;

/// <summary>So many requests a second from one device, twice as many at once; more are told to wait.</summary>
internal static class Pace
{
    public static void AddPace(this IServiceCollection services, ServeLimits limits) => services.AddRateLimiter(options =>
    {
        options.GlobalLimiter = PartitionedRateLimiter.Create<HttpContext, string>(http =>
            RateLimitPartition.GetTokenBucketLimiter(http.Connection.RemoteIpAddress?.ToString() ?? "", _ => new TokenBucketRateLimiterOptions
            {
                TokenLimit = 2 * limits.RequestsPerSecond,
                TokensPerPeriod = Math.Max(1, limits.RequestsPerSecond / 10),
                ReplenishmentPeriod = TimeSpan.FromSeconds(Math.Max(1, limits.RequestsPerSecond / 10) / (double)limits.RequestsPerSecond),
                QueueLimit = 0,
            }));
        options.OnRejected = async (context, _) =>
        {
            var wait = context.Lease.TryGetMetadata(MetadataName.RetryAfter, out var told) ? Math.Max(1, (int)Math.Ceiling(told.TotalSeconds)) : 1;
            context.HttpContext.Response.Headers.RetryAfter = wait.ToString(CultureInfo.InvariantCulture);
            await context.HttpContext.Refuse(StatusCodes.Status429TooManyRequests, new("too-fast", "", "Too many requests in a second.", "Wait a second, then go on."));
        };
    });
}
