namespace Closemown.Estimation;

/// <summary>The inverse Gaussian distribution: when a drifting quantity first reaches a limit.</summary>
/// <remarks>
/// A distance L closed at rate v with variance s² per unit of time is first closed after a time with mean μ = L/v and shape λ = L²/s².
/// Johnson, Kotz and Balakrishnan 1994, Continuous Univariate Distributions 1, chapter 15.
/// </remarks>
public static class InverseGaussian
{
    /// <summary>√(λ/2πx³)·exp(−λ(x − μ)²/2μ²x); zero for x ≤ 0.</summary>
    /// <exception cref="ArgumentOutOfRangeException">mean or shape is not positive and finite.</exception>
    public static double Density(double mean, double shape, double x)
    {
        Check(mean, shape);
        return x > 0 ? Math.Sqrt(shape / (2 * Math.PI * x * x * x)) * Math.Exp(-0.5 * shape * ((x / mean) - 1) * ((x / mean) - 1) / x) : 0;
    }

    /// <summary>The probability of a time up to x: Φ(−z) + exp(2λ/μ)·Φ(−y) with y, −z = √(λ/x)(x/μ ± 1).</summary>
    /// <exception cref="ArgumentOutOfRangeException">mean or shape is not positive and finite.</exception>
    public static double Distribution(double mean, double shape, double x)
    {
        Check(mean, shape);
        if (!(x > 0)) return 0;
        var root = Math.Sqrt(shape / x);
        var z = root * (1 - (x / mean));
        var y = root * (1 + (x / mean));

        // exp(2λ/μ)·φ(y) = φ(z), so the second term needs the Mills ratio alone and cannot overflow.
        return Math.Min(1, NormalMath.UpperTail(z) + (NormalMath.Density(z) * NormalMath.Mills(y)));
    }

    /// <summary>The time by which the limit is reached with probability p, for 0 &lt; p &lt; 1.</summary>
    /// <exception cref="ArgumentOutOfRangeException">mean or shape is not positive and finite, or p lies outside 0 to 1.</exception>
    public static double Quantile(double mean, double shape, double p)
    {
        Check(mean, shape);
        if (!(p > 0 && p < 1)) throw new ArgumentOutOfRangeException(nameof(p), p, $"A probability lies within 0 and 1, but is {ErrorText.N(p)}.");
        double low = 0, high = mean;
        while (Distribution(mean, shape, high) < p) (low, high) = (high, 2 * high);
        var x = 0.5 * (low + high);
        for (var round = 0; round < 200; round++)
        {
            var gap = Distribution(mean, shape, x) - p;
            if (gap < 0) low = x;
            else high = x;
            var density = Density(mean, shape, x);
            var next = density > 0 ? x - (gap / density) : double.NaN;
            if (!(next > low && next < high)) next = 0.5 * (low + high);
            if (Math.Abs(next - x) <= 4e-16 * x) return next;
            x = next;
        }

        return x;
    }

    private static void Check(double mean, double shape)
    {
        if (!(mean > 0 && double.IsFinite(mean))) throw new ArgumentOutOfRangeException(nameof(mean), mean, $"The mean must be positive and finite, but is {ErrorText.N(mean)}.");
        if (!(shape > 0 && double.IsFinite(shape))) throw new ArgumentOutOfRangeException(nameof(shape), shape, $"The shape must be positive and finite, but is {ErrorText.N(shape)}.");
    }
}
