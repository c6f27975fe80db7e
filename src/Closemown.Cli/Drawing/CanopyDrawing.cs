using System.Globalization;
using Closemown.Advice;
using Closemown.Quantities;
using Closemown.Turf;

namespace Closemown.Cli;

/// <summary>The canopy over the last and coming days: a day a column, with its band, mowings, the wished height, frost nights, and rain against what the turf draws.</summary>
internal sealed class CanopyDrawing(Screen screen, WritingStyle style)
{
    private const int Rows = 12, Left = 8, Right = 8, BarRows = 2, Foot = 2 + (2 * BarRows) + 1;
    private const int Mown = Rows, Frost = Rows + 1, Rain = Rows + 2, Drawn = Rain + BarRows, Dates = Drawn + BarRows;
    private const int KeptPast = 3;
    private const double Z = 1.645, RainWorthShowing = 0.5;

    public IEnumerable<string> Lines(IReadOnlyList<CanopyDay> days, double? wishMm)
    {
        days = Fitting(days);
        if (days.Count == 0) return [];
        var low = Math.Floor(Math.Min(days.Min(d => d.MeanMm - (Z * d.SdMm)), wishMm ?? double.MaxValue) * 2) / 2;
        var high = Math.Ceiling(Math.Max(days.Max(d => d.MeanMm + (Z * d.SdMm)), wishMm ?? 0) * 2) / 2;
        low = Math.Max(0, low);
        var step = Math.Max(0.1, (high - low) / (Rows - 1));
        int Row(double mm) => Math.Clamp((int)Math.Round((high - mm) / step), 0, Rows - 1);
        var canvas = new Canvas(Rows + Foot, Left + days.Count + Right);
        var figures = new HeightFigures(style);
        for (var r = 0; r < Rows; r += 3) canvas.Write(r, 0, $"{figures.Number(high - (r * step)),6} ", Tone.Paper);
        var (rain, drawn) = (new SmallBars(days.Select(d => d.RainMm), BarRows), new SmallBars(days.Select(d => d.Et0Mm), BarRows));
        for (var c = 0; c < days.Count; c++)
        {
            var d = days[c];
            for (var r = Row(d.MeanMm + (Z * d.SdMm)); r <= Row(d.MeanMm - (Z * d.SdMm)); r++) canvas.Put(r, Left + c, '░', Tone.Paper);
            // The wished height goes over the band, a dash every other day, and under the turf itself.
            if (wishMm is { } wish && c % 2 == 0) canvas.Put(Row(wish), Left + c, '╌', Tone.Steel);
            canvas.Put(Row(d.MeanMm), Left + c, d.Ahead ? '○' : '●', Tone.Turf);
            if (d.Mown) canvas.Put(Mown, Left + c, 'M', Tone.Strong);
            if (d.Frost >= FrostOutlook.NamedFrom) canvas.Put(Frost, Left + c, 'f');
            rain.Draw(canvas, Rain, Left + c, d.RainMm, RainWorthShowing, Tone.Steel);
            drawn.Draw(canvas, Drawn, Left + c, d.Et0Mm, 0, Tone.Paper);
        }
        if (wishMm is { } wished) canvas.Write(Row(wished), Left + days.Count + 1, "wished", Tone.Steel);
        foreach (var (column, label) in Labels(days)) canvas.Write(Dates, Left + column, label, Tone.Paper);
        canvas.Write(Mown, 0, "mown", Tone.Paper);
        canvas.Write(Frost, 0, "frost", Tone.Paper);
        canvas.Write(Rain + BarRows - 1, 0, "rain mm", Tone.Paper);
        canvas.Write(Drawn + BarRows - 1, 0, "ET mm", Tone.Paper);
        canvas.Write(Rain, Left + days.Count + 1, rain.Scale, Tone.Paper);
        canvas.Write(Drawn, Left + days.Count + 1, drawn.Scale, Tone.Paper);
        return
        [
            $"The standing height, in {figures.Unit}",
            .. canvas.Lines(screen.Ink),
            .. Wrap.Text($"● past   ○ expected if the plan is followed   ░ it lies here 90 times in 100{(wishMm is null ? "" : "   ╌ wished")}   ET: what the weather draws from the turf", screen.Width),
        ];
    }

    /// <summary>The days that the screen has room for: the oldest go first, then the farthest ahead.</summary>
    private List<CanopyDay> Fitting(IReadOnlyList<CanopyDay> days)
    {
        var room = Math.Max(1, screen.Width - Left - Right);
        var past = Math.Min(Math.Max(0, days.Count(d => !d.Ahead) - KeptPast), Math.Max(0, days.Count - room));
        return [.. days.Skip(past).Take(room)];
    }

    /// <summary>The first day, today and the firsts of months, where they do not run into each other.</summary>
    private static List<(int Column, string Label)> Labels(IReadOnlyList<CanopyDay> days)
    {
        var labels = new List<(int Column, string Label)>();
        var today = Enumerable.Range(1, Math.Max(0, days.Count - 1)).FirstOrDefault(c => days[c].Ahead && !days[c - 1].Ahead);
        if (today > 0) labels.Add((today, "today"));
        foreach (var c in Enumerable.Range(0, days.Count).Where(c => c == 0 || days[c].Date.Day == 1))
        {
            var label = days[c].Date.ToString("d MMM", CultureInfo.InvariantCulture);
            if (labels.TrueForAll(l => c > l.Column + l.Label.Length || l.Column > c + label.Length)) labels.Add((c, label));
        }
        return labels;
    }
}
