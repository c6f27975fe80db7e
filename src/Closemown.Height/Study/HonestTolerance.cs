using Closemown.Estimation;

namespace Closemown.Height;

/// <summary>How close a setting can honestly be, given what the gauge scatters and a hand can set.</summary>
public static class HonestTolerance
{
    /// <summary>The smallest tolerance within which both sides can be said to be with a probability, after some readings a side, mm.</summary>
    /// <remarks>
    /// Each side's mean is known to s² = EV²/n + AV² (AV counts where another person must agree), and the hand leaves it anywhere within half the smallest turn,
    /// δ²/12. Both sides within: (2Φ(tol/s) − 1)² = P. Nothing known of the height before is used, so a known setting does better.
    /// </remarks>
    /// <example>A gauge of 0.035 mm read three times, 0.025 mm the smallest turn, 0.85: s = 0.0215 mm, tol = 1.77·s = 0.038 mm. Read once: 0.063.</example>
    /// <param name="evMm">Repeatability, mm.</param>
    /// <param name="readings">Readings a side, 1 or more.</param>
    /// <param name="probability">How sure, above 0 and below 1.</param>
    /// <param name="smallestMoveMm">What the smallest turn worth making moves, mm.</param>
    /// <param name="avMm">Reproducibility, mm, where another person's reading has to agree; else 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of its range.</exception>
    public static double Mm(double evMm, int readings, double probability = HeightAim.DefaultProbability, double smallestMoveMm = 0.025, double avMm = 0)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(readings, 1);
        ArgumentOutOfRangeException.ThrowIfNegative(evMm);
        ArgumentOutOfRangeException.ThrowIfNegative(smallestMoveMm);
        ArgumentOutOfRangeException.ThrowIfNegative(avMm);
        if (!(probability > 0 && probability < 1)) throw new ArgumentOutOfRangeException(nameof(probability), probability, "A probability lies between 0 and 1.");
        var s = Math.Sqrt((evMm * evMm / readings) + (avMm * avMm) + (smallestMoveMm * smallestMoveMm / 12));
        return s * NormalMath.InversePhi((1 + Math.Sqrt(probability)) / 2);
    }
}
