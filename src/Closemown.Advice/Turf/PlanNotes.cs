using Closemown.Entries;
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
        foreach (var n in plan.Plan.Notes)
        {
            var match = n.Fixture is { } f ? $"Match on {TurfSpeech.Day(f)}: " : "";
            yield return (n.Date, match + n.Kind switch
            {
                PlanNoteKind.LapBy => $"no {{lap}} after {TurfSpeech.Day(n.Date)}.",
                PlanNoteKind.SandBy => $"no sand after {TurfSpeech.Day(n.Date)}.",
                PlanNoteKind.HeightHeldFrom => $"no change of height from {TurfSpeech.Day(n.Date)}.",
                _ => $"Roll or double-cut before the step down on {TurfSpeech.Day(n.Date)}: the pace may come without it.",
            });
        }
        var track = plan.Today.Ledger.Track;
        if (plan.Today.Ledger.Heard.LastOrDefault(e => e.Is(WorkEntry.Kind) && e[WorkEntry.What] == "topdress") is { } sand && track.Cuts.Count(c => c.Mowing.At > sand.At) < SandMowings)
            yield return (null, "Sand is still in the turf and blunts the edges: feel and {lap} after it has gone, not before.");
        if (unit is not null && desk.Track(unit).Unit.ClipMm is { } clip && plan.Plan.Days.FirstOrDefault(d => d.Mow && !ClipForHeight.Suits(clip, d.CutMm)) is { } wide)
            yield return (wide.Date, $"The clip of {HeightSpeech.Mm(clip)} is long for a cut of {HeightSpeech.Mm(wide.CutMm)}: waves may show across the cut (information).");
    }
}
