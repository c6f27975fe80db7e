namespace Closemown.Estimation;

/// <summary>A normal distribution kept to an interval.</summary>
public static class TruncatedNormal
{
    /// <summary>Mean and standard deviation of N(<paramref name="mu"/>, <paramref name="sigma"/>²) kept to [<paramref name="a"/>, <paramref name="b"/>].</summary>
    /// <remarks>Limits may be infinite; exact far in the tails. Johnson, Kotz and Balakrishnan 1994, Continuous Univariate Distributions 1, 10.1.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">sigma is not positive and finite.</exception>
    /// <exception cref="ArgumentException">a is not below b.</exception>
    public static (double Mean, double Sd) Moments(double mu, double sigma, double a, double b)
    {
        if (!(sigma > 0 && double.IsFinite(sigma))) throw new ArgumentOutOfRangeException(nameof(sigma), sigma, ErrorText.Spread(sigma));
        if (!(a < b)) throw new ArgumentException(ErrorText.Limits(a, b), nameof(a));
        IntervalLikelihood.Moments((a - mu) / sigma, (b - mu) / sigma, (b - a) / sigma, out _, out var f1, out _, out var variance);
        return (mu + (sigma * f1), sigma * Math.Sqrt(variance));
    }
}
