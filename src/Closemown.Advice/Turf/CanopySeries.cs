using Closemown.Turf;

namespace Closemown.Advice;

/// <summary>One day of a canopy drawn over time.</summary>
/// <param name="Date">The day.</param>
/// <param name="MeanMm">What stands at noon, mm; before a mowing where it is planned.</param>
/// <param name="SdMm">Its spread, mm.</param>
/// <param name="Mown">Whether it was, or is to be, mown.</param>
/// <param name="Frost">Probability that the grass freezes in the night.</param>
/// <param name="Et0Mm">Reference evapotranspiration, mm.</param>
/// <param name="RainMm">Rain, mm.</param>
/// <param name="Ahead">Whether it lies ahead.</param>
public sealed record CanopyDay(DateOnly Date, double MeanMm, double SdMm, bool Mown, double Frost, double Et0Mm, double RainMm, bool Ahead);

/// <summary>An area's canopy over past and coming days.</summary>
public static class CanopySeries
{
    private static readonly TimeSpan Noon = TimeSpan.FromHours(12);

    /// <summary>The days.</summary>
    /// <param name="desk">The entries.</param>
    /// <param name="plan">The plan: days ahead come from it.</param>
    /// <param name="back">Days back.</param>
    /// <param name="ahead">Days ahead, today included; no more than the plan has.</param>
    public static IReadOnlyList<CanopyDay> Of(Desk desk, AreaPlan plan, int back, int ahead)
    {
        ArgumentNullException.ThrowIfNull(desk);
        ArgumentNullException.ThrowIfNull(plan);
        var (ledger, today) = (plan.Today.Ledger, plan.Today);
        var (track, belief) = (ledger.Track, ledger.Belief);
        var mown = track.Cuts.Select(c => track.Area.LocalDate(c.Mowing.At)).ToHashSet();
        var series = new List<CanopyDay>();
        var first = track.Moments.Count > 0 ? track.Area.LocalDate(track.Moments[0].At) : today.Date;
        for (var k = -back; k < 0; k++)
        {
            var date = today.Date.AddDays(k);
            if (date < first) continue;
            var noon = track.Area.At(date, Noon, today.At);
            var (mean, sd) = belief.StandsMm(noon, belief.At(noon));
            series.Add(Day(track, date, mean, sd, mown.Contains(date), false));
        }
        // What nobody knows is not drawn.
        foreach (var d in (today.HeightKnown ? plan.Plan.Days : []).Take(ahead)) series.Add(Day(track, d.Date, d.CanopyMm.Mean, d.CanopyMm.Sd, d.Mow, true));
        return series;
    }

    private static CanopyDay Day(AreaTrack track, DateOnly date, double mean, double sd, bool mown, bool ahead)
    {
        var day = track.Days.On(date);
        return new(date, mean, sd, mown, FrostOutlook.Probability(day, 0, track.Days.Usual.On(date)), day.Et0Mm, day.Weather.RainMm, ahead);
    }
}
