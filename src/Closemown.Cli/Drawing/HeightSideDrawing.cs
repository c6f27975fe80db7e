using Closemown.Height;
using Closemown.Quantities;

namespace Closemown.Cli;

/// <summary>The unit from the side: both rollers, the bedknife between them over the turf, and what is cut; heights are drawn far taller than lengths.</summary>
internal sealed class HeightSideDrawing(Screen screen, WritingStyle style)
{
    private const int LabelWidth = 7, MostRows = 12, SideWidth = 24;
    private readonly HeightFigures figures = new(style);

    /// <summary>The drawing, line by line; nothing where the height was not read.</summary>
    /// <param name="b">What is known.</param>
    /// <param name="area">The area; null for the one last mown.</param>
    /// <param name="wet">Whether it is wet.</param>
    public IEnumerable<string> Lines(HeightBelief b, string? area, bool wet)
    {
        if (b.BenchMm(0).Sd > 1) yield break;
        double bench = (b.BenchMm(0).Mean + b.BenchMm(1).Mean) / 2, sink = b.SinkMm(area, wet).Mean, cut = bench - sink;
        var per = style.Height == Quantities.HeightUnit.Mm ? 1 : 25.4;
        // Heights over the base of the turf: the plane under both rollers lies where the edge less the bench height does.
        var scale = new HeightScale(Math.Min(0, -sink) / per, (Math.Max(cut, 0) + 1.5) / per, MostRows);
        var columns = Math.Min(screen.Width, 90) - LabelWidth - SideWidth;
        var canvas = new Canvas(scale.Rows, screen.Width);
        int front = LabelWidth + (columns * 18 / 100), rear = LabelWidth + (columns * 84 / 100), knife = LabelWidth + (columns / 2);
        Turf(canvas, scale, columns, knife, cut / per);
        Line(canvas, scale.Row(0), columns, '▁', Tone.Turf);
        Line(canvas, scale.Row(-sink / per), columns, '╌', Tone.Plain);
        foreach (var axis in (int[])[front, rear]) Roller(canvas, scale, axis, -sink / per, columns / 9);
        Knife(canvas, scale, knife, columns / 7, cut / per, (b.Track.Unit.LipMm ?? 0) / per);
        for (var r = 0; r < scale.Rows; r += 2) canvas.Write(r, 0, figures.Decimals(scale.At(r), style.Height == Quantities.HeightUnit.Mm ? 1 : 2).PadLeft(LabelWidth - 2));
        Labels(canvas, scale, LabelWidth + columns + 1, cut / per, -sink / per, $"edge {figures.Whole(bench)}", $"  over that plane", $"cuts {figures.Whole(cut)}");
        foreach (var line in Wrap.Text($"From the side, {figures.Unit} over the base of the turf; heights drawn far too tall", screen.Width)) yield return screen.Ink(Tone.Strong, line);
        foreach (var line in canvas.Lines(screen.Ink)) yield return line;
        foreach (var line in Wrap.Whole([$"█ {Words.For(style, WordKey.Bedknife)}", "╲▁╱ rollers", "╌ the plane under both", "│ turf", "▁ its base"], screen.Width)) yield return line;
    }

    private void Labels(Canvas canvas, HeightScale scale, int column, double cut, double plane, string edge, string over, string cuts)
    {
        var row = Math.Max(0, scale.Row(cut) - 1);
        canvas.Write(row, column, edge, Tone.Steel);
        canvas.Write(row + 1, column, over, Tone.Steel);
        canvas.Write(Math.Min(scale.Rows - 3, row + 3), column, cuts, Tone.Turf);
        canvas.Write(scale.Row(0), column, "base of the turf", Tone.Turf);
        if (scale.Row(plane) != scale.Row(0)) canvas.Write(scale.Row(plane), column, $"plane {figures.Decimals(plane, style.Height == Quantities.HeightUnit.Mm ? 2 : 3)}");
    }

    /// <summary>Uncut before the knife, cut behind it.</summary>
    private static void Turf(Canvas canvas, HeightScale scale, int columns, int knife, double cut)
    {
        for (var r = 0; r < scale.Rows; r++)
        {
            for (var c = LabelWidth + 1; c < LabelWidth + columns; c += 2)
            {
                var stands = c <= knife ? cut + (1.2 * scale.Step) : cut;
                if (scale.At(r) > 0 && scale.At(r) <= stands + 1e-9) canvas.Put(r, c, '│', Tone.Turf);
            }
        }
    }

    private static void Line(Canvas canvas, int row, int columns, char sign, Tone tone)
    {
        for (var c = 0; c < columns; c++) canvas.Put(row, LabelWidth + c, sign, tone);
    }

    /// <summary>The lower part of a roller: it widens as a circle does near its lowest point.</summary>
    private static void Roller(Canvas canvas, HeightScale scale, int axis, double plane, int half)
    {
        var bottom = scale.Row(plane);
        for (var r = 0; r <= bottom; r++)
        {
            var out1 = (int)Math.Round(half * Math.Sqrt((bottom - r + 0.6) / (bottom + 1.0)) * 1.15);
            for (var c = -out1 + 1; c < out1; c++) canvas.Put(r, axis + c, r == bottom ? '▁' : ' ', Tone.Steel);
            canvas.Put(r, axis - out1, '╲', Tone.Steel);
            canvas.Put(r, axis + out1, '╱', Tone.Steel);
        }
    }

    private static void Knife(Canvas canvas, HeightScale scale, int column, int length, double cut, double lip)
    {
        int edge = scale.Row(cut), low = Math.Max(edge, scale.Row(cut - lip));
        for (var r = edge; r <= Math.Max(edge, low - 1); r++)
        {
            for (var c = r == edge ? 0 : 1; c < (r == edge ? length : 2); c++) canvas.Put(r, column + c, '█', Tone.Steel);
        }
    }
}
