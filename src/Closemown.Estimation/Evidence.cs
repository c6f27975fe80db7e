namespace Closemown.Estimation;

/// <summary>The parts of log p(readings).</summary>
/// <remarks>
/// Laplace: log p ≈ Σ log factors at the mode + (n/2) log 2π − ½ log |H|. Expectation propagation: the same with each interval's site
/// −½τη² + νη in place of the interval, plus for each reading log Z − log ∫N(η; m_c, v_c) exp(−½τη² + νη) dη, Z being its
/// probability under the cavity. Rasmussen and Williams 2006, eq. 3.32 and 3.65. For Gaussian factors alone it is exact.
/// </remarks>
internal static class Evidence
{
    /// <summary>(n/2) log 2π − ½ log |H|.</summary>
    public static double OfGaussian(int n, BlockElimination factor) => (n * NormalMath.LogRoot2Pi) - (0.5 * factor.LogDeterminant);

    /// <summary>log N(η; 0, sd²).</summary>
    public static double LogDensity(double eta, double sd) => (-0.5 * (eta / sd) * (eta / sd)) - Math.Log(sd) - NormalMath.LogRoot2Pi;

    /// <summary>The site at the mean m less the log of its average over the cavity.</summary>
    public static double OfSite(double tau, double nu, double m, double mc, double vc)
    {
        var slope = nu - (tau * mc);
        var loose = 1 + (tau * vc);
        return ((m - mc) * (nu - (0.5 * tau * (m + mc)))) + (0.5 * NormalMath.Log1p(tau * vc)) - (0.5 * vc * slope * slope / loose);
    }

    /// <summary>Σ log N(η; 0, sd²) of the Gaussian factors at the predictors in Eta.</summary>
    public static double OfGaussians(Workspace w)
    {
        var sum = 0.0;
        foreach (var k in w.Gaussians)
        {
            var z = w.Eta[k] / w.Sd[k];
            sum += z * z;
        }

        return (-0.5 * sum) - w.GaussianLogs;
    }

    /// <summary>The Laplace evidence from what <see cref="NewtonMode"/> left behind.</summary>
    public static double OfMode(Workspace w)
    {
        var sum = OfGaussian(w.U.Length, w.Elimination) + OfGaussians(w);
        foreach (var k in w.Intervals) sum += w.F[k];
        return sum;
    }
}
