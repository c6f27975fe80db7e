using Closemown.Entries;
using Closemown.Steel;

namespace Closemown.Advice;

/// <summary>What stands behind a step, in sentences: the last readings, the gap, the edges, and what this unit has taught.</summary>
internal static class Reasons
{
    private static readonly (string Kind, string Said)[] Kinds = [("paper-cut", "The strip"), ("paper-drag", "The drag was"), ("contact", "Felt backwards"), ("torch", "Under the torch"), ("feeler", "Feeler")];

    public static List<string> Of(SteelBelief belief, SittingNow sitting)
    {
        var why = new List<string>();
        var track = belief.Track;
        foreach (var (kind, said) in Kinds)
        {
            if (sitting.Entries.LastOrDefault(e => e.Is(kind)) is { } read && kind != "feeler")
                why.Add($"{said} {string.Join(", ", Enumerable.Range(0, 3).Where(s => read.Word(Stations.All[s]) is not null).Select(s => $"{Verb(kind, read.Word(Stations.All[s])!)} {StepSpeech.Place(s)}"))}.");
        }
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

    private static string Verb(string kind, string word) => kind switch
    {
        "contact" => word == "none" ? "nothing" : word == "light" ? "a light touch" : "a heavy touch",
        "torch" => word == "none" ? "no bright line" : $"a {word} bright line",
        _ => word,
    };
}
