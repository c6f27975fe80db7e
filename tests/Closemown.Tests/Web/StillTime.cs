namespace Closemown.Tests.Web;

/// <summary>A clock that stands until it is put on.</summary>
internal sealed class StillTime(DateTimeOffset now) : TimeProvider
{
    public DateTimeOffset Now { get; set; } = now;

    public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

    public override DateTimeOffset GetUtcNow() => Now;
}
