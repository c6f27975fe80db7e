using System.Globalization;

namespace Closemown.Cli;

/// <summary>Amounts by day as small bars, an eighth of a row the finest step, with what a full bar is.</summary>
internal sealed class SmallBars
{
    private const string Eighths = " ▁▂▃▄▅▆▇█";
    private static readonly double[] Tops = [1, 2, 5, 10, 20, 50, 100, 200, 500];
    private readonly int rows;

    /// <summary>Bars for some amounts.</summary>
    /// <param name="amounts">The amounts, none below 0.</param>
    /// <param name="rows">How many rows high a full bar is.</param>
    public SmallBars(IEnumerable<double> amounts, int rows)
    {
        this.rows = rows;
        var most = amounts.DefaultIfEmpty(0).Max();
        Top = Array.Find(Tops, t => t >= most) is > 0 and var top ? top : Tops[^1];
    }

    /// <summary>The amount of a full bar: a round number, no less than the most there is.</summary>
    public double Top { get; }

    /// <summary>The scale in a word: "to 20".</summary>
    public string Scale => string.Create(CultureInfo.InvariantCulture, $"to {Top:0}");

    /// <summary>Draws a bar; what is worth showing at all shows at least the thinnest.</summary>
    /// <param name="canvas">Where.</param>
    /// <param name="row">The top row of the bars.</param>
    /// <param name="column">The column.</param>
    /// <param name="amount">The amount.</param>
    /// <param name="least">An amount below this is left blank.</param>
    /// <param name="tone">The tone.</param>
    public void Draw(Canvas canvas, int row, int column, double amount, double least, Tone tone)
    {
        if (amount < least) return;
        var eighths = Math.Clamp((int)Math.Round(amount / Top * rows * 8), 1, rows * 8);
        for (var r = rows - 1; r >= 0 && eighths > 0; r--, eighths -= 8) canvas.Put(row + r, column, Eighths[Math.Min(8, eighths)], tone);
    }
}
