using Closemown.Entries;
using Closemown.Quantities;
using Closemown.Steel;

namespace Closemown.Cli;

/// <summary>The gap along the width as seen from behind: the line, where it lies 90 times in 100, the strip, the tolerance, and what was last read.</summary>
internal sealed class NipDrawing(Screen screen, WritingStyle style)
{
    private const int LabelWidth = 6;
    private const int SideWidth = 13;
    private const double LeastUm = -60;
    private const double MostUm = 160;
    private readonly GapText gap = new(style);

    /// <summary>The drawing, line by line.</summary>
    public IEnumerable<string> Lines(SteelBelief belief, IReadOnlyList<Entry> standing)
    {
        var columns = screen.Width - LabelWidth - 2 - SideWidth;
        var profile = new NipProfile(belief);
        var line = Enumerable.Range(0, columns).Select(c => profile.At(MmAt(c, columns, profile))).ToArray();
        var scale = Scale(belief, line);
        var reads = LastReads.Of(belief.Track.Unit.Name, standing);
        var canvas = new Canvas(scale.Rows + 3 + reads.Count, screen.Width);
        var per = gap.UmPerUnit;

        Axes(canvas, scale, belief, columns);
        for (var c = 0; c < columns; c++) Column(canvas, scale, LabelWidth + 1 + c, line[c], belief.Track.Strip.Um / per, per);
        Stations3At(canvas, scale, belief, profile, columns, reads);
        foreach (var row in Wrap.Text($"{Capital(Words.For(style, WordKey.Clearance))} between {Words.For(style, WordKey.Reel)} and {Words.For(style, WordKey.Bedknife)}, {gap.Unit}, seen from behind", screen.Width)) yield return screen.Ink(Tone.Strong, row);
        foreach (var row in canvas.Lines(screen.Ink)) yield return row;
        foreach (var row in Wrap.Whole(["─ as estimated", "░ nearly always here", "╌ the strip's thickness", "═ touching", "┃ in tolerance", .. LastReads.Legend(reads)], screen.Width)) yield return row;
    }

    private static double MmAt(int column, int columns, NipProfile profile) => ((((column + 0.5) / columns) * 2) - 1) * profile.HalfMm;

    private static int ColumnAt(double mm, int columns, NipProfile profile) => Math.Clamp((int)(((mm / profile.HalfMm) + 1) / 2 * columns), 0, columns - 1);

    private NipScale Scale(SteelBelief belief, Estimate[] line)
    {
        var (low, high) = belief.Track.Unit.BandUm;
        var least = Math.Max(LeastUm, Math.Min(Math.Min(low, 0), line.Min(e => e.P05)));
        var most = Math.Min(MostUm, Math.Max(Math.Max(high, belief.Track.Strip.Um), line.Max(e => e.P95)));
        return new NipScale(least / gap.UmPerUnit, Math.Max(most, belief.Track.Strip.Um) / gap.UmPerUnit);
    }

    private void Axes(Canvas canvas, NipScale scale, SteelBelief belief, int columns)
    {
        var (low, high) = belief.Track.Unit.BandUm;
        var right = LabelWidth + 1 + columns;
        for (var r = 0; r < scale.Rows; r++)
        {
            var within = scale.At(r) * gap.UmPerUnit >= low - 1e-9 && scale.At(r) * gap.UmPerUnit <= high + 1e-9;
            if (NipScale.IsTick(r)) canvas.Write(r, 0, gap.Decimals(scale.At(r), scale.Tick < 1 ? 1 : 0).PadLeft(LabelWidth - 1));
            canvas.Put(r, LabelWidth, within ? '┃' : NipScale.IsTick(r) ? '┤' : '│');
            canvas.Put(r, right, within ? '┃' : '│');
        }
        var taken = new HashSet<int>();
        void Label(int row, string text, Tone tone = Tone.Plain)
        {
            if (row < 0 || row >= scale.Rows || !taken.Add(row)) return;
            canvas.Write(row, right + 2, text, tone);
        }
        Label(scale.Row(0), "touching");
        Label(scale.Row(belief.Track.Strip.Um / gap.UmPerUnit), $"strip {gap.Number(belief.Track.Strip.Um)}", Tone.Paper);
        var middle = scale.Row((low + high) / 2 / gap.UmPerUnit);
        Label(taken.Contains(middle) ? middle - 1 : middle, "in tolerance");
    }

    private static void Column(Canvas canvas, NipScale scale, int column, Estimate e, double strip, double per)
    {
        for (var r = 0; r < scale.Rows; r++)
        {
            if (scale.At(r) >= e.P05 / per && scale.At(r) <= e.P95 / per) canvas.Put(r, column, '░', Tone.Paper);
        }
        canvas.Put(scale.Row(strip), column, '╌', Tone.Paper);
        canvas.Put(scale.Row(0), column, '═');
        var place = scale.Place(e.Mean / per);
        var row = (int)Math.Round(place, MidpointRounding.AwayFromZero);
        if (row < 0 || row >= scale.Rows) return;
        var part = place - row;
        canvas.Put(row, column, part < -1.0 / 6 ? '▔' : part > 1.0 / 6 ? '▁' : '─', Tone.Steel);
    }

    private void Stations3At(Canvas canvas, NipScale scale, SteelBelief belief, NipProfile profile, int columns, IReadOnlyList<LastRead> reads)
    {
        var bottom = scale.Rows;
        canvas.Put(bottom, LabelWidth, '└');
        for (var c = 0; c < columns; c++) canvas.Put(bottom, LabelWidth + 1 + c, '─');
        canvas.Put(bottom, LabelWidth + 1 + columns, '┘');
        for (var s = 0; s < 3; s++)
        {
            var at = LabelWidth + 1 + ColumnAt(belief.Track.Unit.StationAtMm[s], columns, profile);
            canvas.Put(bottom, at, '┴');
            var edge = LabelWidth + 2 + columns;
            Centred(canvas, bottom + 1, at, edge, Words.For(style, s switch { 0 => WordKey.Left, 1 => WordKey.Centre, _ => WordKey.Right }), Tone.Strong);
            Centred(canvas, bottom + 2, at, edge, gap.Said(belief.ClearanceUm(s)), Tone.Steel);
            for (var k = 0; k < reads.Count; k++)
            {
                if (reads[k].At[s] is { } word) Centred(canvas, bottom + 3 + k, at, edge, $"{LastReads.Mark(reads[k].Kind, word)} {word}");
            }
        }
        canvas.Write(bottom + 2, LabelWidth + columns + 3, "now");
        for (var k = 0; k < reads.Count; k++) canvas.Write(bottom + 3 + k, 0, reads[k].Name);
        for (var k = 0; k < reads.Count; k++) canvas.Write(bottom + 3 + k, LabelWidth + columns + 3, reads[k].When);
    }

    private static void Centred(Canvas canvas, int row, int column, int edge, string text, Tone tone = Tone.Plain) =>
        canvas.Write(row, Math.Max(LabelWidth + 1, Math.Min(column - (text.Length / 2), edge - text.Length)), text, tone);

    private static string Capital(string word) => char.ToUpperInvariant(word[0]) + word[1..];
}
