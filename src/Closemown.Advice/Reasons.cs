using Closemown.Steel;

namespace Closemown.Advice;

/// <summary>What stands behind a step, in sentences: the gap, the edges, and what this unit has taught. What was read a minute ago is not told back.</summary>
internal static class Reasons
{
    public static List<string> Of(SteelBelief belief)
    {
        var why = new List<string>();
        var track = belief.Track;
        var gaps = Enumerable.Range(0, 3).Select(s => (Station: s, Gap: belief.ClearanceUm(s))).OrderByDescending(p => p.Gap.Mean).ToArray();
        var (wide, close) = (gaps[0], gaps[^1]);
        why.Add(wide.Gap.Mean - close.Gap.Mean < 2
            ? $"The {{gap}} is about {StepSpeech.Um(wide.Gap.Mean)} all along, give or take {StepSpeech.Um(wide.Gap.Sd)}."
            : $"The {{gap}} is widest {StepSpeech.Place(wide.Station)}, about {StepSpeech.Um(wide.Gap.Mean)} (give or take {StepSpeech.Um(wide.Gap.Sd)}), and least {StepSpeech.Place(close.Station)}, about {StepSpeech.Um(close.Gap.Mean)} (give or take {StepSpeech.Um(close.Gap.Sd)}).");
        var edge = Enumerable.Range(0, 3).Select(belief.EdgeUm).MaxBy(e => e.Mean);
        why.Add($"The edges are worth up to about {StepSpeech.Um(Math.Max(0, edge.Mean))} of {{bluntness}} (give or take {StepSpeech.Um(edge.Sd)}).");
        var (left, right) = (belief.OpeningUmPerHour(0), belief.OpeningUmPerHour(1));
        if (Math.Abs(left.Mean - right.Mean) > Math.Sqrt((left.Sd * left.Sd) + (right.Sd * right.Sd)))
        {
            var (side, more, less) = left.Mean > right.Mean ? ("left", left, right) : ("right", right, left);
            why.Add($"This unit opens faster at the {side}: about {StepSpeech.Um(more.Mean)} an hour against {StepSpeech.Um(Math.Max(0, less.Mean))}.");
        }
        if (track.Memory.FitWanted is null && !track.FitSeen)
            why.Add("No look at bearings, screws and blades is in the book yet: if something knocks, no check means anything.");
        return why;
    }
}
