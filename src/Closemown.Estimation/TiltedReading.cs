namespace Closemown.Estimation;

/// <summary>An interval read of a predictor N(m_c, v_c): the pseudo-reading that matches the moments, and what was found on the way.</summary>
/// <remarks>With S² = σ² + v_c and f′, f″ at (limit − m_c)/S; Rasmussen and Williams 2006, 3.6, for two limits.</remarks>
internal readonly struct TiltedReading
{
    /// <summary>log of its probability.</summary>
    public readonly double F;

    /// <summary>The pseudo-reading's precision τ and shift ν.</summary>
    public readonly double Precision, Shift;

    /// <summary>The predictor's mean and variance after the reading.</summary>
    public readonly double Mean, Variance;

    public TiltedReading(FactorRows rows, int k, double sd, double mc, double vc)
    {
        var total = (sd * sd) + vc;
        var s = Math.Sqrt(total);
        IntervalLikelihood.Moments((rows.Low[k] - mc) / s, (rows.High[k] - mc) / s, (rows.High[k] - rows.Low[k]) / s,
            out F, out var f1, out var f2, out var kept);
        f2 = Math.Min(0, f2);
        var left = (sd * sd) + (vc * kept);
        Precision = -f2 / left;
        Shift = ((f1 * s) - (mc * f2)) / left;
        Mean = mc + (vc * f1 / s);
        Variance = vc * left / total;
    }

    /// <summary>From moments worked out elsewhere: τ = 1/variance − 1/v_c, ν = mean/variance − m_c/v_c.</summary>
    /// <remarks>Log-concave likelihoods never widen, so a negative τ can only be rounding.</remarks>
    public TiltedReading(double f, double mean, double variance, double mc, double vc)
    {
        (F, Mean, Variance) = (f, mean, variance);
        Precision = Math.Max(0, (vc - variance) / (vc * variance));
        Shift = ((mean - mc) / variance) + (Precision * mc);
    }

    /// <summary>No finite answer.</summary>
    public static TiltedReading None => new(double.NaN, double.NaN, double.NaN, double.NaN, double.NaN);
}
