namespace Closemown.Estimation;

/// <summary>Readings of one predictor that share part of their error, as numbers alone: how probable they are together.</summary>
public sealed class SharedError
{
    private readonly TiltedRepeats tilted = new();
    private RepeatedReading[] readings = [];

    /// <summary>log of the probability that readings of η ~ N(mean, variance), each with spread sd of which a share of the variance is common to all, fall between their limits.</summary>
    /// <param name="limits">Low and high limit of each, infinite for none.</param>
    /// <param name="mean">The predictor's mean.</param>
    /// <param name="variance">Its variance, above 0.</param>
    /// <param name="sd">The spread of each reading, above 0.</param>
    /// <param name="shared">The common share of its variance, 0 to below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of its range.</exception>
    public double LogProbability(IReadOnlyList<(double Low, double High)> limits, double mean, double variance, double sd, double shared)
    {
        ArgumentNullException.ThrowIfNull(limits);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(variance);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(sd);
        if (!(shared >= 0 && shared < 1)) throw new ArgumentOutOfRangeException(nameof(shared), shared, ErrorText.Shared);
        if (readings.Length < limits.Count) readings = new RepeatedReading[2 * limits.Count];
        var own = sd * Math.Sqrt(1 - shared);
        for (var i = 0; i < limits.Count; i++) readings[i] = new(limits[i].Low, limits[i].High, limits[i].High - limits[i].Low, own, 1);
        return tilted.Match(readings.AsSpan(0, limits.Count), mean, variance + (shared * sd * sd)).F;
    }
}
