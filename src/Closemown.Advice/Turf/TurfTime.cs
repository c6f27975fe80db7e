namespace Closemown.Advice;

/// <summary>At what time of a named day the turf is meant.</summary>
internal static class TurfTime
{
    private static readonly TimeSpan Noon = TimeSpan.FromHours(12);

    /// <summary>Now where the day is today's; else noon of that day, there.</summary>
    public static DateTimeOffset On(Desk desk, string area, DateOnly? date, DateTimeOffset now)
    {
        var place = desk.Ledger(area).Track.Area;
        return date is not { } d || d == place.LocalDate(now) ? now : place.At(d, Noon, now);
    }
}
