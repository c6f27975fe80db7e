using Closemown.Turf;

namespace Closemown.Advice;

/// <summary>What goes with a plan: matches counted back, sand and laps, the clip.</summary>
public static class PlanNotes
{
    private const int SandMowings = 3;

    /// <summary>The notes, by day where they have one.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="desk">The entries.</param>
    /// <param name="unit">The unit that mows, or null.</param>
    public static IEnumerable<(DateOnly? Date, string Say)> Of(AreaPlan plan, Desk desk, string? unit)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(desk);
        var (wish, first) = (plan.Today.Ledger.Wish, plan.Today.Date);
        foreach (var match in wish.Fixtures.Where(f => f >= first && f < first.AddDays(Math.Max(plan.Told, PlanRules.NoSandDays))))
        {
            yield return (match, $"Match on {TurfSpeech.Day(match)}: no sand from {TurfSpeech.Day(match.AddDays(-PlanRules.NoSandDays))}, no change of height from {TurfSpeech.Day(match.AddDays(-wish.NoHeightChangeDays))}, no {{lap}} from {TurfSpeech.Day(match.AddDays(-PlanRules.NoLapDays))}.");
        }
        var track = plan.Today.Ledger.Track;
        if (plan.Today.Ledger.Heard.LastOrDefault(e => e.Is("work") && e.Word("what") == "topdress") is { } sand && track.Cuts.Count(c => c.Mowing.At > sand.At) < SandMowings)
            yield return (null, "Sand is still in the turf and blunts the edges: feel and {lap} after it has gone, not before.");
        if (unit is not null && desk.Track(unit).Unit.ClipMm is { } clip && plan.Plan.Days.Take(plan.Told).FirstOrDefault(d => d.Mow && !ClipForHeight.Suits(clip, d.CutMm)) is { } wide)
            yield return (wide.Date, $"The clip of {HeightSpeech.Mm(clip)} is long for a cut of {HeightSpeech.Mm(wide.CutMm)}: waves may show across the cut (information).");
    }
}
