namespace Closemown.Cli;

/// <summary>The height of the drawing: rows from top to bottom in the person's unit, a tick every third row, zero on a tick.</summary>
internal sealed class NipScale
{
    private const int RowsPerTick = 3;
    private const int MostTicks = 6;

    public NipScale(double low, double high)
    {
        double[] nice = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500];
        Tick = nice.First(t => Math.Ceiling(high / t) - Math.Floor(low / t) <= MostTicks || t == nice[^1]);
        (Top, var bottom) = (Math.Ceiling(high / Tick) * Tick, Math.Floor(low / Tick) * Tick);
        Rows = ((int)Math.Round((Top - bottom) / Tick) * RowsPerTick) + 1;
    }

    public double Tick { get; }

    public double Top { get; }

    public int Rows { get; }

    public double PerRow => Tick / RowsPerTick;

    /// <summary>The value in the middle of a row.</summary>
    public double At(int row) => Top - (row * PerRow);

    /// <summary>The row of a value, unrounded.</summary>
    public double Place(double value) => (Top - value) / PerRow;

    public int Row(double value) => (int)Math.Round(Place(value), MidpointRounding.AwayFromZero);

    public static bool IsTick(int row) => row % RowsPerTick == 0;
}
