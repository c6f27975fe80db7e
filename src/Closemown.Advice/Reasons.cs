using Closemown.Steel;

namespace Closemown.Advice;

/// <summary>What stands behind a step, in places and {step}s: how the ends stand, how the edges are, and what this unit has taught. What was read a minute ago is not told back.</summary>
internal static class Reasons
{
    private const double HardlyClicks = 0.3;     // less than this is no difference that a hand can set
    private const double BluntUm = 15;

    /// <summary>The reasons, the weightiest first, without figures.</summary>
    public static List<string> Of(SteelBelief belief)
    {
        var why = new List<string> { Ends(belief) };
        if (Blades(belief.Track) is { } blades) why.Add(blades);
        if (Edges(belief) is { } edges) why.Add(edges);
        if (Faster(belief) is var (side, _, _)) why.Add($"This unit opens faster at the {side}.");
        if (belief.Track.Memory.FitWanted is null && !belief.Track.FitSeen)
            why.Add("No look at bearings, screws and blades is in the book yet: if something knocks, no check means anything.");
        return why;
    }

    /// <summary>The figures behind them, for who asks why.</summary>
    public static IEnumerable<string> Figures(SteelBelief belief)
    {
        var gaps = Enumerable.Range(0, 3).Select(s => (Station: s, Gap: belief.ClearanceUm(s))).OrderByDescending(p => p.Gap.Mean).ToArray();
        var (wide, close) = (gaps[0], gaps[^1]);
        yield return wide.Gap.Mean - close.Gap.Mean < 2
            ? $"The {{gap}} all along: {StepSpeech.Gap(wide.Gap.Mean)}, give or take {StepSpeech.Off(wide.Gap.Sd)}."
            : $"The {{gap}} {StepSpeech.Place(wide.Station)}, where it is widest: {StepSpeech.Gap(wide.Gap.Mean)}, give or take {StepSpeech.Off(wide.Gap.Sd)}; {StepSpeech.Place(close.Station)}, where it is least: {StepSpeech.Gap(close.Gap.Mean)}, give or take {StepSpeech.Off(close.Gap.Sd)}.";
        var edge = Enumerable.Range(0, 3).Select(belief.EdgeUm).MaxBy(e => e.Mean);
        yield return $"The edges are worth up to about {StepSpeech.Gap(Math.Max(0, edge.Mean))} of {{bluntness}}, give or take {StepSpeech.Off(edge.Sd)}.";
        if (Faster(belief) is var (side, more, less)) yield return $"It opens by about {StepSpeech.Um(more)} an hour at the {side}, by {StepSpeech.Um(less)} at the other end.";
    }

    /// <summary>Which end is wider, and by how many steps; where they stand alike, against what is wanted.</summary>
    private static string Ends(SteelBelief belief)
    {
        var tilt = belief.TiltClicks;
        var clicks = Math.Round(Math.Abs(tilt.Mean) * 2) / 2;
        if (Math.Abs(tilt.Mean) < tilt.Sd || clicks < HardlyClicks)
            return tilt.Sd > 1.5 ? "Nothing tells yet how the two ends stand to each other." : $"Both ends stand about alike, {Level(belief)}.";
        var (wide, other) = tilt.Mean > 0 ? ("left", 2) : ("right", 0);
        var touch = belief.ClearanceUm(other).Mean < 0 ? $", which {(belief.Track.Memory.Touched(other) ? "touches" : "is close to touching")}" : "";
        return $"The {wide} end is {Count(clicks)} wider than the {Stations(other)}{touch}.";
    }

    private static string Level(SteelBelief belief)
    {
        var (low, high) = belief.Track.Unit.BandUm;
        var mean = Enumerable.Range(0, 3).Average(s => belief.ClearanceUm(s).Mean);
        var off = (mean > high ? mean - high : mean < low ? low - mean : 0) / Math.Max(1, belief.ClickUm(0).Mean);
        var clicks = Math.Round(off * 2) / 2;
        return clicks < HardlyClicks ? "about where they should" : $"{Count(clicks)} {(mean > high ? "wider" : "closer")} than wanted";
    }

    private static string? Edges(SteelBelief belief)
    {
        var edge = Enumerable.Range(0, 3).Select(s => (Station: s, Um: belief.EdgeUm(s))).MaxBy(e => e.Um.Mean);
        if (edge.Um.Mean - edge.Um.Sd > BluntUm) return $"The edges look blunt{(edge.Station == 1 ? "" : $", most {StepSpeech.Place(edge.Station)}")}.";
        return edge.Um.Mean + edge.Um.Sd < BluntUm ? "The edges look sharp." : null;
    }

    private static string? Blades(UnitTrack track)
    {
        for (var s = 0; s < 3; s++)
        {
            if (track.Memory.Signs.Blades.Differ(s) is { } tightest)
                return $"The blades differ {StepSpeech.Place(s)}: {Phrasing.AsTyped(tightest)} is the tightest of those felt, and the adjuster is set by it.";
        }
        return null;
    }

    private static (string Side, double More, double Less)? Faster(SteelBelief belief)
    {
        var (left, right) = (belief.OpeningUmPerHour(0), belief.OpeningUmPerHour(1));
        if (Math.Abs(left.Mean - right.Mean) <= Math.Sqrt((left.Sd * left.Sd) + (right.Sd * right.Sd))) return null;
        return left.Mean > right.Mean ? ("left", left.Mean, Math.Max(0, right.Mean)) : ("right", right.Mean, Math.Max(0, left.Mean));
    }

    private static string Stations(int station) => station == 0 ? "left" : "right";

    /// <summary>"about one and a half {step}s".</summary>
    private static string Count(double clicks) => clicks switch
    {
        0.5 => "about half a {step}",
        1 => "about one {step}",
        1.5 => "about one and a half {step}s",
        2 => "about two {step}s",
        2.5 => "about two and a half {step}s",
        3 => "about three {step}s",
        _ => $"about {Phrasing.Number(Math.Round(clicks), "0")} {{step}}s",
    };
}
