using Closemown.Estimation;

namespace Closemown.Height;

/// <summary>A number as it is known, bell-shaped: mean, spread and three points of its distribution, all in the unit of its name.</summary>
public readonly record struct HeightEstimate(double Mean, double Sd)
{
    private const double Z95 = 1.6448536269514722;

    public double P05 => Mean - (Z95 * Sd);

    public double P50 => Mean;

    public double P95 => Mean + (Z95 * Sd);

    /// <summary>The probability that the number is below a limit.</summary>
    public double Below(double limit) => Sd > 0 ? NormalMath.Phi((limit - Mean) / Sd) : Mean < limit ? 1 : 0;

    internal static HeightEstimate Of((double Mean, double Variance) p) => new(p.Mean, Math.Sqrt(Math.Max(0, p.Variance)));
}
