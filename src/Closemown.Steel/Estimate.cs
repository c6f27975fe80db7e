using Closemown.Estimation;

namespace Closemown.Steel;

/// <summary>A number as it is known: mean, spread and three points of its distribution, all in the unit of its name.</summary>
public readonly record struct Estimate(double Mean, double Sd, double P05, double P50, double P95)
{
    private const double Z95 = 1.6448536269514722;

    /// <summary>A bell-shaped estimate.</summary>
    public static Estimate Normal(double mean, double variance)
    {
        var sd = Math.Sqrt(Math.Max(0, variance));
        return new(mean, sd, mean - (Z95 * sd), mean, mean + (Z95 * sd));
    }

    /// <summary>An estimate from equally likely values; the span is sorted in place.</summary>
    public static Estimate FromDraws(Span<double> values)
    {
        values.Sort();
        var mean = 0.0;
        foreach (var v in values) mean += v;
        mean /= values.Length;
        var square = 0.0;
        foreach (var v in values) square += (v - mean) * (v - mean);
        return new(mean, Math.Sqrt(square / values.Length), Point(values, 0.05), Point(values, 0.5), Point(values, 0.95));
    }

    /// <summary>The probability that the number is below a limit, taken as bell-shaped.</summary>
    public double Below(double limit) => Sd > 0 ? NormalMath.Phi((limit - Mean) / Sd) : Mean < limit ? 1 : 0;

    private static double Point(Span<double> sorted, double p)
    {
        var at = p * (sorted.Length - 1);
        var i = (int)at;
        return i + 1 >= sorted.Length ? sorted[^1] : sorted[i] + ((at - i) * (sorted[i + 1] - sorted[i]));
    }
}
