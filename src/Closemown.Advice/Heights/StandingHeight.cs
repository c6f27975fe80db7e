using Closemown.Entries;

namespace Closemown.Advice;

/// <summary>What an area's turf stands at by its last reading or mowing, without the growth since.</summary>
/// <param name="Mm">The height, mm.</param>
/// <param name="At">When it was so.</param>
/// <param name="From">The entry that says so.</param>
public sealed record StandingHeight(double Mm, DateTimeOffset At, Entry From)
{
    /// <summary>The last height known; null where neither a reading nor a mowing tells.</summary>
    public static StandingHeight? Of(Desk desk, string? area)
    {
        ArgumentNullException.ThrowIfNull(desk);
        foreach (var e in desk.Standing.Reverse())
        {
            if (area is not null && e.Area != area) continue;
            if (e.Is(CanopyEntry.Kind))
            {
                if (e[CanopyEntry.Mm] is { Count: > 0 } spots) return new(spots.Average(), e.At, e);
                if (e[CanopyEntry.LowMm] is { } low && e[CanopyEntry.HighMm] is { } high) return new((low + high) / 2, e.At, e);
            }
            else if (e.Is(MowEntry.Kind))
            {
                // As the unit stood when asked: settings are seldom changed between a mowing and the question.
                if (e[MowEntry.CutMm] is { } cut) return new(cut, e.At, e);
                if (e.Unit is { } unit && desk.Height(unit) is { Track.Readings: > 0 } belief) return new(belief.CutMm(area).Mean, e.At, e);
                if (e[MowEntry.BenchMm] is { } bench && e.Unit is { } by) return new(desk.Height(by).CutAtMm(bench, area).Mean, e.At, e);
            }
        }
        return null;
    }
}
