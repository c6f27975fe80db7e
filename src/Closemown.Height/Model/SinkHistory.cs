using Closemown.Entries;

namespace Closemown.Height;

/// <summary>What was known of the sink after a mowing whose standing height was read.</summary>
/// <param name="At">When it was read.</param>
/// <param name="Area">The area; empty where none was named.</param>
/// <param name="BenchMm">Bench height then, both sides taken together, mm.</param>
/// <param name="ReadMm">The middle of the spots read, mm.</param>
/// <param name="Spots">How many spots.</param>
/// <param name="SinkMm">Bench height less cut, mm, as all readings until then tell it; firm and dry unless it was said otherwise.</param>
public sealed record SinkMoment(DateTimeOffset At, string Area, HeightEstimate BenchMm, double ReadMm, int Spots, HeightEstimate SinkMm);

/// <summary>How the sink came to be known, mowing by mowing: each moment rests on what was in the record until then.</summary>
public static class SinkHistory
{
    /// <summary>The moments, in order.</summary>
    /// <param name="unit">The unit's short name.</param>
    /// <param name="standing">Standing entries in order.</param>
    /// <param name="area">Only this area; null for all.</param>
    public static IReadOnlyList<SinkMoment> Of(string unit, IReadOnlyList<Entry> standing, string? area = null)
    {
        ArgumentNullException.ThrowIfNull(standing);
        var track = new HeightTrack(HeightUnit.Of(unit, standing.Where(e => e.Unit == unit && e.Is(UnitEntry.Kind))));
        var moments = new List<SinkMoment>();
        foreach (var e in standing)
        {
            if (track.Add(e) is null || !e.Is(CanopyEntry.Kind) || e[CanopyEntry.Mm] is not { Count: > 0 } spots) continue;
            var on = e.Area ?? track.LastArea ?? "";
            if (area is not null && on != area) continue;
            moments.Add(new(e.At, on, track.BenchNowMm, spots.Average(), spots.Count, track.SinkNowMm(on)));
        }
        return moments;
    }
}
