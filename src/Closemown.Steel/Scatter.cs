namespace Closemown.Steel;

/// <summary>How much a person's readings scatter against the starting values: one common factor on a small grid, weighed by evidence.</summary>
public static class Scatter
{
    private const double Spread = 0.40;                  // of the logarithm: an assumption, no source

    /// <summary>The factors tried; 1 is the starting value of <see cref="SteelDefaults.ScatterUm"/>.</summary>
    public static IReadOnlyList<double> Factors { get; } = [0.7, 1.0, 1.4, 2.0, 2.8];

    /// <summary>The grid that learns nothing.</summary>
    internal static IReadOnlyList<double> Fixed { get; } = [1.0];

    /// <summary>Logarithm of the weight of a factor before any reading, up to a constant.</summary>
    public static double LogPrior(double factor)
    {
        var z = Math.Log(factor) / Spread;
        return -0.5 * z * z;
    }
}

/// <summary>What is known of one person's scatter.</summary>
/// <param name="By">The person; empty where entries do not say.</param>
/// <param name="Readings">Readings so far, one a station.</param>
/// <param name="Factors">The factors tried.</param>
/// <param name="Weights">Probability of each factor.</param>
public sealed record PersonScatter(string By, int Readings, IReadOnlyList<double> Factors, IReadOnlyList<double> Weights)
{
    /// <summary>Mean factor.</summary>
    public double Mean => Factors.Zip(Weights, (f, w) => f * w).Sum();

    /// <summary>Its spread.</summary>
    public double Sd => Math.Sqrt(Factors.Zip(Weights, (f, w) => w * (f - Mean) * (f - Mean)).Sum());
}
