using System.Globalization;
using Closemown.Advice;
using Closemown.Quantities;
using Closemown.Turf;

namespace Closemown.Cli;

/// <summary>The canopy over the last and coming days: a day a column, with its band, mowings, the wished height, frost nights, and rain against what the turf draws.</summary>
internal sealed class CanopyDrawing(Screen screen, WritingStyle style)
{
    private const int Rows = 12, Left = 8, Foot = 5;
    private const double Z = 1.645;

    public IEnumerable<string> Lines(IReadOnlyList<CanopyDay> days, double? wishMm)
    {
        if (days.Count == 0) return [];
        var low = Math.Floor(Math.Min(days.Min(d => d.MeanMm - (Z * d.SdMm)), wishMm ?? double.MaxValue) * 2) / 2;
        var high = Math.Ceiling(Math.Max(days.Max(d => d.MeanMm + (Z * d.SdMm)), wishMm ?? 0) * 2) / 2;
        low = Math.Max(0, low);
        var step = Math.Max(0.1, (high - low) / (Rows - 1));
        int Row(double mm) => Math.Clamp((int)Math.Round((high - mm) / step), 0, Rows - 1);
        var canvas = new Canvas(Rows + Foot, Left + days.Count + 24);
        var figures = new HeightFigures(style);
        for (var r = 0; r < Rows; r += 3) canvas.Write(r, 0, $"{figures.Number(high - (r * step)),6} ", Tone.Paper);
        if (wishMm is { } wish)
        {
            for (var c = 0; c < days.Count; c += 2) canvas.Put(Row(wish), Left + c, '-', Tone.Paper);
            canvas.Write(Row(wish), Left + days.Count + 1, "wished", Tone.Paper);
        }
        for (var c = 0; c < days.Count; c++)
        {
            var d = days[c];
            for (var r = Row(d.MeanMm + (Z * d.SdMm)); r <= Row(d.MeanMm - (Z * d.SdMm)); r++) canvas.Put(r, Left + c, ':', Tone.Paper);
            canvas.Put(Row(d.MeanMm), Left + c, d.Ahead ? 'o' : '*', Tone.Turf);
            if (d.Mown) canvas.Put(Rows, Left + c, 'M', Tone.Strong);
            if (d.Frost >= FrostOutlook.NamedFrom) canvas.Put(Rows + 1, Left + c, 'f');
            if (d.RainMm >= 0.5) canvas.Put(Rows + 2, Left + c, Size(d.RainMm));
            canvas.Put(Rows + 3, Left + c, Size(d.Et0Mm), Tone.Paper);
            if (c == 0 || d.Date.Day == 1 || (d.Ahead && !days[c - 1].Ahead)) canvas.Write(Rows + 4, Left + c, Label(d, c > 0 && d.Ahead && !days[c - 1].Ahead), Tone.Paper);
        }
        canvas.Write(Rows, 0, "mown", Tone.Paper);
        canvas.Write(Rows + 1, 0, "frost", Tone.Paper);
        canvas.Write(Rows + 2, 0, "rain mm", Tone.Paper);
        canvas.Write(Rows + 3, 0, "ET mm", Tone.Paper);
        return [$"The canopy, in {figures.Unit}: * past, o expected if the plan is followed, : 90 in 100", .. canvas.Lines(screen.Ink)];
    }

    private static string Label(CanopyDay d, bool today) => today ? "today" : d.Date.ToString("d MMM", CultureInfo.InvariantCulture);

    /// <summary>Millimetres as one sign: 1 to 9, + from ten on.</summary>
    private static char Size(double mm) => mm >= 9.5 ? '+' : (char)('0' + (int)Math.Round(mm));
}
