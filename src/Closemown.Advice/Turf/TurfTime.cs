namespace Closemown.Advice;

/// <summary>At what time of a named day the turf is meant.</summary>
internal static class TurfTime
{
    private static readonly TimeSpan Noon = TimeSpan.FromHours(12);

    /// <summary>The moment that a question of now is about: the hour that has begun, or the last entry where that is later. So all that is asked within an hour is told of one state of the turf.</summary>
    public static DateTimeOffset Now(Desk desk, DateTimeOffset now)
    {
        var hour = new DateTimeOffset(now.Ticks - (now.Ticks % TimeSpan.TicksPerHour), now.Offset);
        foreach (var e in desk.Standing)
        {
            if (e.At > hour && e.At <= now) hour = e.At;
        }
        return hour;
    }

    /// <summary>Now where the day is today's; else noon of that day, there.</summary>
    public static DateTimeOffset On(Desk desk, string area, DateOnly? date, DateTimeOffset now)
    {
        var place = desk.Ledger(area).Track.Area;
        return date is not { } d || d == place.LocalDate(now) ? Now(desk, now) : place.At(d, Noon, now);
    }
}
