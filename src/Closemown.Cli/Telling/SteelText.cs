using Closemown.Advice;
using Closemown.Entries;
using Closemown.Quantities;
using Closemown.Steel;

namespace Closemown.Cli;

/// <summary>What is known of a unit's steel, as a small table.</summary>
internal static class SteelText
{
    /// <summary>Gap and bluntness at the stations; click, opening and the rest by side.</summary>
    public static IEnumerable<string> Table(SteelBelief b, WritingStyle style, int width)
    {
        var gap = new GapText(style);
        var label = 23;
        var cell = Math.Clamp((width - label) / 3, 12, 16);
        string Row(string name, params string[] cells) => (name.PadRight(label) + string.Concat(cells.Select(c => c.PadRight(cell)))).TrimEnd();
        string Side(Func<int, Estimate> of, string name) => Row(name, gap.Pair(of(0), true), "", gap.Pair(of(1), true));
        yield return Row($"in {gap.Unit}", Words.For(style, WordKey.Left), Words.For(style, WordKey.Centre), Words.For(style, WordKey.Right));
        yield return Row(Words.For(style, WordKey.Clearance), [.. Enumerable.Range(0, 3).Select(s => gap.Said(b.ClearanceUm(s)))]);
        yield return Row(Words.For(style, WordKey.Edge), [.. Enumerable.Range(0, 3).Select(s => gap.Said(b.EdgeUm(s)))]);
        yield return Side(b.ClickUm, $"one {b.Track.Unit.AdjusterStep}");
        yield return Side(b.OpeningUmPerHour, "opening an hour mown");
        yield return Row($"{Words.For(style, WordKey.Lap)}, a minute", gap.Pair(b.LapUmPerMinute, true));
        yield return Row("bow in the middle", "", gap.Pair(b.BowUm, true));
        yield return Row("lost on reversing", gap.Pair(b.LostMotionUm(0), true), "", gap.Pair(b.LostMotionUm(1), true));
        yield return "";
        var use = b.UsableGapUm();
        foreach (var line in Wrap.Text($"The strip meets {LengthPrinting.SaidGap(use.Mean, style)} (give or take {LengthPrinting.SaidSpread(use.Sd, style)}) where {Words.For(style, WordKey.Clearance)} and {Words.For(style, WordKey.Edge)} are worst; leaves begin to tear at about {LengthPrinting.SaidGap(b.CleanUm.Mean, style)}. Give or take (±): it lies that near about 2 times in 3.", width)) yield return line;
        if (b.Posterior.Remark is { } remark) yield return remark;
    }

    /// <summary>Readings that were not like this mower, the last three.</summary>
    public static IEnumerable<string> Unusual(SteelBelief b, WritingStyle style, int width)
    {
        foreach (var unusual in b.Track.Unusual.TakeLast(3))
        {
            var (entry, surprise) = (unusual.Entry, unusual.Surprise);
            var now = b.Track.Memory.Unusual is { } odd && odd.Entry.Id == entry.Id;
            foreach (var line in Wrap.Text($"{EntryWords.When(entry.At)}: {EntryWords.Short(entry, style)} was not like this mower ({Chance.OneIn(surprise)}){(now ? "; read it again before anything is turned" : "")}.{(ExplanationSpeech.Sentence(unusual.Explanations) is { } said ? " " + said : "")}", width)) yield return line;
        }
    }

    /// <summary>The last things entered about a unit.</summary>
    public static IEnumerable<string> History(IEnumerable<Entry> standing, string unit, int count, WritingStyle style, int width) =>
        standing.Where(e => e.Unit == unit).TakeLast(count).SelectMany(e => Wrap.Beside("  " + EntryWords.When(e.At), EntryWords.Short(e, style), width, 23));
}
