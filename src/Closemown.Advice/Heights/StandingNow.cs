using Closemown.Entries;

namespace Closemown.Advice;

/// <summary>What an area's turf stands at when it is asked, mm.</summary>
internal static class StandingNow
{
    /// <summary>A reading of so many hours is what stands: nothing to reckon.</summary>
    private const double FreshHours = 12;

    /// <summary>The height, growth since the last news of it counted; null where nothing tells it, or the last news is so old that nobody knows.</summary>
    public static double? Of(Desk desk, string area, DateTimeOffset now)
    {
        if (StandingHeight.Of(desk, area) is not { } read) return null;
        if (read.From.Is(CanopyEntry.Kind) && (now - read.At).TotalHours < FreshHours) return read.Mm;
        if (desk.Ledger(area).Track is { HeightReadings: 0, Mowings: 0 }) return read.Mm;
        var today = AreaToday.Of(desk, area, TurfTime.Now(desk, now));
        return today.HeightKnown ? today.CanopyMm.Mean : null;
    }
}
