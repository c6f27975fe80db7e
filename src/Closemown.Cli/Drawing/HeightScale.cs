namespace Closemown.Cli;

/// <summary>Heights on rows of a drawing: the finest round step that fits.</summary>
internal sealed class HeightScale
{
    private static readonly double[] Steps = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5];

    /// <param name="low">Least height that must be seen.</param>
    /// <param name="high">Greatest height that must be seen.</param>
    /// <param name="mostRows">Rows there are.</param>
    public HeightScale(double low, double high, int mostRows)
    {
        Step = Steps.FirstOrDefault(s => Count(low, high, s) <= mostRows, Steps[^1]);
        Top = Math.Ceiling((high / Step) - 1e-9) * Step;
        Rows = Count(low, high, Step);
    }

    /// <summary>Height from one row to the next.</summary>
    public double Step { get; }

    public int Rows { get; }

    private double Top { get; }

    /// <summary>Height at the middle of a row.</summary>
    public double At(int row) => Top - (row * Step);

    /// <summary>The row nearest to a height.</summary>
    public int Row(double height) => (int)Math.Round((Top - height) / Step, MidpointRounding.AwayFromZero);

    private static int Count(double low, double high, double step) => (int)Math.Round((Math.Ceiling((high / step) - 1e-9) - Math.Floor((low / step) + 1e-9))) + 1;
}
