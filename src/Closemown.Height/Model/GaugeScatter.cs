using Closemown.Entries;

namespace Closemown.Height;

/// <summary>How much a person's gauge readings scatter against the starting value: a factor on a small grid, weighed by evidence.</summary>
public static class GaugeScatter
{
    private const double Spread = 0.6;                   // of the logarithm: from a dial bar (0.02) to a ruler (0.15); an assumption, no source

    /// <summary>The factors tried; 1 is the starting value.</summary>
    public static IReadOnlyList<double> Factors { get; } = [0.35, 0.5, 0.7, 1.0, 1.4, 2.0, 2.8, 4.0];

    /// <summary>The grid that learns nothing.</summary>
    internal static IReadOnlyList<double> Fixed { get; } = [1.0];

    /// <summary>Logarithm of the weight of a factor before any reading, up to a constant.</summary>
    /// <param name="factor">The factor.</param>
    /// <param name="told">The person's own starting value: its spread over its mean is taken as the spread of the logarithm, 0.1 to 0.8.</param>
    public static double LogPrior(double factor, Prior? told = null)
    {
        var z = Math.Log(factor) / (told is { } p ? Math.Clamp(p.Sd / p.Mean, 0.1, 0.8) : Spread);
        return -0.5 * z * z;
    }
}

/// <summary>What is known of one person's scatter with the gauge.</summary>
/// <param name="By">The person; empty where entries do not say.</param>
/// <param name="Readings">Readings so far, one a side.</param>
/// <param name="SdMm">The scatters tried, mm.</param>
/// <param name="Weights">Probability of each.</param>
public sealed record ReaderScatter(string By, int Readings, IReadOnlyList<double> SdMm, IReadOnlyList<double> Weights)
{
    /// <summary>The scatter, mean and spread, mm.</summary>
    public HeightEstimate Estimate
    {
        get
        {
            var mean = SdMm.Zip(Weights, (s, w) => s * w).Sum();
            // The grid's steps are a factor of 1.4 apart: it cannot say more than about a tenth, however many readings there are.
            const double Grid = 0.1;
            return new(mean, Math.Sqrt(SdMm.Zip(Weights, (s, w) => w * (s - mean) * (s - mean)).Sum() + (Grid * mean * Grid * mean)));
        }
    }
}
