using Closemown.Height;
using Closemown.Quantities;

namespace Closemown.Cli;

/// <summary>Both sides of the bedknife from behind: where each stands on the bench, how surely, and where it is wanted.</summary>
internal sealed class HeightFrontDrawing(Screen screen, WritingStyle style)
{
    private const int LabelWidth = 7, MostRows = 13, SideWidth = 15;
    private readonly HeightFigures figures = new(style);

    /// <summary>The drawing, line by line; nothing where the height was not read.</summary>
    /// <param name="b">What is known.</param>
    /// <param name="wantedMm">The bench height wanted; null for none.</param>
    /// <param name="tolMm">How far off it may be.</param>
    public IEnumerable<string> Lines(HeightBelief b, double? wantedMm, double tolMm)
    {
        HeightEstimate left = b.BenchMm(0), right = b.BenchMm(1);
        if (Math.Max(left.Sd, right.Sd) > 1) yield break;
        var per = style.Height == Quantities.HeightUnit.Mm ? 1 : 25.4;
        double[] seen = [left.P05, left.P95, right.P05, right.P95, .. wantedMm is { } w ? (double[])[w - tolMm, w + tolMm] : []];
        var scale = new HeightScale(seen.Min() / per, seen.Max() / per, MostRows);
        var columns = Math.Min(screen.Width, 80) - LabelWidth - SideWidth - 2;
        var canvas = new Canvas(scale.Rows + 2, screen.Width);
        Frame(canvas, scale, columns);
        if (wantedMm is { } wanted) Wanted(canvas, scale, columns, wanted / per, tolMm / per);
        Side(canvas, scale, LabelWidth + 1 + (columns / 5), left, per);
        Side(canvas, scale, LabelWidth + 1 + (4 * columns / 5), right, per);
        Knife(canvas, scale, columns, left.Mean / per, right.Mean / per);
        foreach (var (at, word, e) in ((int, WordKey, HeightEstimate)[])[(columns / 5, WordKey.Left, left), (4 * columns / 5, WordKey.Right, right)])
        {
            Centred(canvas, scale.Rows, LabelWidth + 1 + at, Words.For(style, word), Tone.Strong);
            Centred(canvas, scale.Rows + 1, LabelWidth + 1 + at, figures.Pair(e), Tone.Steel);
        }
        foreach (var line in Wrap.Text($"Bench height left and right, {figures.Unit}, seen from behind; drawn far too steep", screen.Width)) yield return screen.Ink(Tone.Strong, line);
        foreach (var line in canvas.Lines(screen.Ink)) yield return line;
        string[] legend = ["● as estimated", "░ it lies here 90 times in 100", .. wantedMm is null ? (string[])[] : ["╌ wanted", "┃ within the tolerance"]];
        foreach (var line in Wrap.Whole(legend, screen.Width)) yield return line;
    }

    private void Frame(Canvas canvas, HeightScale scale, int columns)
    {
        var decimals = style.Height == Quantities.HeightUnit.Mm ? 2 : 3;
        for (var r = 0; r < scale.Rows; r++)
        {
            if (r % 2 == 0) canvas.Write(r, 0, figures.Decimals(scale.At(r), decimals).PadLeft(LabelWidth - 1));
            canvas.Put(r, LabelWidth, r % 2 == 0 ? '┤' : '│');
            canvas.Put(r, LabelWidth + 1 + columns, '│');
        }
    }

    private void Wanted(Canvas canvas, HeightScale scale, int columns, double wanted, double tol)
    {
        var right = LabelWidth + 1 + columns;
        for (var r = 0; r < scale.Rows; r++)
        {
            if (scale.At(r) < wanted - tol - (scale.Step / 2) || scale.At(r) > wanted + tol + (scale.Step / 2)) continue;
            canvas.Put(r, LabelWidth, '┃');
            canvas.Put(r, right, '┃');
        }
        var row = scale.Row(wanted);
        for (var c = 1; c <= columns; c++) canvas.Put(row, LabelWidth + c, '╌', Tone.Paper);
        canvas.Write(row, right + 2, $"wanted {figures.Decimals(wanted, style.Height == Quantities.HeightUnit.Mm ? 2 : 3)}", Tone.Paper);
    }

    private static void Side(Canvas canvas, HeightScale scale, int column, HeightEstimate e, double per)
    {
        for (var r = 0; r < scale.Rows; r++)
        {
            if (scale.At(r) < (e.P05 / per) - (scale.Step / 2) || scale.At(r) > (e.P95 / per) + (scale.Step / 2)) continue;
            for (var c = -2; c <= 2; c++) canvas.Put(r, column + c, '░', Tone.Paper);
        }
    }

    /// <summary>The edge of the knife as a line through both sides.</summary>
    private static void Knife(Canvas canvas, HeightScale scale, int columns, double left, double right)
    {
        int from = columns / 5, to = 4 * columns / 5;
        for (var c = 1; c <= columns; c++)
        {
            var height = left + ((right - left) * (c - from) / (to - from));
            var row = scale.Row(height);
            if (row < 0 || row >= scale.Rows) continue;
            canvas.Put(row, LabelWidth + c, '─', Tone.Steel);
        }
        canvas.Put(scale.Row(left), LabelWidth + 1 + from, '●', Tone.Steel);
        canvas.Put(scale.Row(right), LabelWidth + 1 + to, '●', Tone.Steel);
    }

    private static void Centred(Canvas canvas, int row, int column, string text, Tone tone) => canvas.Write(row, Math.Max(0, column - (text.Length / 2)), text, tone);
}
