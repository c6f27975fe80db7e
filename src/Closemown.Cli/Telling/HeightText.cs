using Closemown.Advice;
using Closemown.Height;
using Closemown.Quantities;

namespace Closemown.Cli;

/// <summary>What is known of a unit's height and of what it cuts, told to a person.</summary>
internal sealed class HeightText(HeightBelief b, string? area, bool wet, WritingStyle style, int width)
{
    private const int Label = 27;
    private readonly HeightFigures figures = new(style);

    private string OnArea => (area ?? b.Track.LastArea) is { Length: > 0 } on ? $" on {on}" : "";

    /// <summary>Bench and cut by side, and what the screws were found to do.</summary>
    public IEnumerable<string> Table()
    {
        var cell = Math.Clamp((width - Label) / 2, 16, 20);
        string Row(string name, string left, string right) => (name.PadRight(Label) + left.PadRight(cell) + right).TrimEnd();
        string Side(string name, Func<int, string> of) => Row(name, of(0), of(1));
        yield return Row($"in {figures.Unit}", Words.For(style, WordKey.Left), Words.For(style, WordKey.Right));
        yield return Side("bench, as gauged tight", s => b.BenchMm(s).Sd > 1 ? "not read" : figures.Pair(b.BenchMm(s)));
        if (b.BenchMm(0).Sd <= 1) yield return Side("cut expected", s => figures.Pair(b.CutSideMm(s, area, wet)));
        yield return Side("a turn of the screw", s => figures.Pair(b.ScrewMmPerTurn(s)));
        yield return Side("pulled by the other screw", s => $"{figures.Plain(Percent(b.PullShare(s)), 0)} %");
        yield return Side("lost on reversing, turns", s => figures.Plain(b.LostTurns(s), 2));
        yield return Row("one reading of the gauge", "± " + figures.Number(b.GaugeSdMm.Mean), "");
        if (b.LockShiftMm(0) is { } left && b.LockShiftMm(1) is { } right) yield return Row("tightening adds", figures.Pair(left), figures.Pair(right));
    }

    /// <summary>What the next mowing will cut, and what that rests on.</summary>
    public IEnumerable<string> Cut(double? benchMm)
    {
        if (benchMm is null && b.BenchMm(0).Sd > 1)
        {
            yield return "The bench height was not read yet, so nothing can be said of the cut: closemown add gauge LEFT RIGHT.";
            yield break;
        }
        var cut = benchMm is { } at ? b.CutAtMm(at, area, wet) : b.CutMm(area, wet);
        var sink = b.SinkMm(area, wet);
        yield return $"{(benchMm is { } set ? $"With the gauge at {figures.Whole(set)} it" : "As it stands it")} cuts {figures.Whole(cut.Mean)}{OnArea}{(wet ? ", wet" : "")}, 90 times in 100 {figures.Range(cut)}.";
        var (mowings, spots) = b.Track.CanopyRead(area);
        yield return $"That is {figures.Whole(Math.Abs(sink.Mean))} {(sink.Mean >= 0 ? "below" : "above")} what the gauge reads (give or take {figures.Number(sink.Sd)}), from "
            + (spots == 0 ? "usual values alone: no standing height was read after a mowing yet." : $"{Count(spots, "spot")} read after {Count(mowings, "mowing")}.") + $" The gauge was read {Count(b.Track.Readings, "time")}, left and right counted apart.";
        if (benchMm is not null) yield break;
        var drivers = b.CutDrivers(area, wet).Where(d => d.Share >= 0.01).Select(d => $"{HeightSpeech.Driver(d.What)} {Math.Round(100 * d.Share):0}");
        yield return $"What is not known of it, in 100: {string.Join(", ", drivers)}.";
        yield return Sides();
        if (b.KnifeClearMm(area, wet) is { } room)
            yield return room.Mean < KnifeClear.DragsBelowMm
                ? $"The {Words.For(style, WordKey.Bedknife)} drags: only {figures.Whole(room.Mean)} is left under its lip, and it needs {figures.Whole(KnifeClear.DragsBelowMm)}."
                : $"Under the lip of the {Words.For(style, WordKey.Bedknife)} {figures.Whole(room.Mean)} is left; below {figures.Whole(b.LowestBenchMm(area, wet)!.Value.Mean)} on the bench it would drag.";
    }

    /// <summary>What to set for a wished cut, and which reading would teach most.</summary>
    public IEnumerable<string> Wished(double cutMm, Phrasing words)
    {
        var set = b.SetBenchMm(cutMm, area, wet);
        var cut = b.CutAtMm(set.Mean, area, wet);
        yield return $"For a cut of {figures.Whole(cutMm)}{OnArea} set the bench to {figures.Whole(set.Mean)} on both sides; expect 90 times in 100 {figures.Range(cut)}.";
        if (b.LowestBenchMm(area, wet) is { } lowest && lowest.Mean > set.Mean) yield return $"The {Words.For(style, WordKey.Bedknife)} would drag there: it needs about {figures.Whole(lowest.Mean)}.";
        if (b.Track.Unit.RangeMm is { } range && (set.Mean < range.Low || set.Mean > range.High)) yield return $"The screws reach only {figures.Number(range.Low)} to {figures.Whole(range.High)}.";
        var best = CutReading.Of(b, area, wet)[0];
        yield return $"What would teach most: {Lower(words.Say(HeightAnswer.Say(best, set.Sd)))}";
        yield return $"To be led there: closemown next --cut {figures.Whole(cutMm).Replace(" ", "", StringComparison.Ordinal)}{(area is null ? "" : $" --area {CommandWord.Of(area)}")}";
    }

    private string Sides()
    {
        var tilt = b.TiltMm;
        var step = SideStep.Mm(tilt.Mean, b.Track.Unit.ReadApartMm, b.Track.Unit.WidthMm);
        var lower = tilt.Mean < 0 ? WordKey.Left : WordKey.Right;
        return $"The {Words.For(style, lower)} side stands {figures.Whole(Math.Abs(tilt.Mean))} lower (give or take {figures.Number(tilt.Sd)}): {SideStep.Seen(step)}.";
    }

    private static HeightEstimate Percent(HeightEstimate e) => new(100 * e.Mean, 100 * e.Sd);

    private static string Count(int n, string what) => $"{n.ToString(System.Globalization.CultureInfo.InvariantCulture)} {what}{(n == 1 ? "" : "s")}";

    private static string Lower(string text) => char.ToLowerInvariant(text[0]) + text[1..];
}
