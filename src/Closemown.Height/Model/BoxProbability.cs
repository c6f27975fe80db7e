using Closemown.Estimation;

namespace Closemown.Height;

/// <summary>The probability that two numbers known together lie within a box.</summary>
internal static class BoxProbability
{
    /// <summary>Points of the outer integral: the inner one is exact, so even narrow boxes are good to about 1e-6.</summary>
    private const int Points = 60;

    public static double Of(GaussianState g, BenchPair wanted, double tolMm)
    {
        var n = g.Size;
        return Of(g.Mean[0] - wanted.LeftMm, g.Mean[1] - wanted.RightMm, g.Covariance[0], g.Covariance[n + 1], g.Covariance[1], tolMm);
    }

    /// <summary>P(|x| ≤ tol and |y| ≤ tol) for a bivariate normal.</summary>
    /// <param name="mx">Mean of x.</param>
    /// <param name="my">Mean of y.</param>
    /// <param name="vx">Variance of x.</param>
    /// <param name="vy">Variance of y.</param>
    /// <param name="cxy">Covariance.</param>
    /// <param name="tol">Half the side of the box.</param>
    public static double Of(double mx, double my, double vx, double vy, double cxy, double tol)
    {
        double sx = Math.Sqrt(Math.Max(vx, 1e-18)), slope = cxy / (sx * sx), rest = Math.Sqrt(Math.Max(vy - (slope * cxy), 1e-18));
        // Only where x has weight: the middle of the box beyond eight spreads of x adds nothing.
        double low = Math.Max(-tol, mx - (8 * sx)), high = Math.Min(tol, mx + (8 * sx));
        if (low >= high) return 0;
        var width = (high - low) / Points;
        var sum = 0.0;
        for (var i = 0; i < Points; i++)
        {
            var x = low + ((i + 0.5) * width);
            var m = my + (slope * (x - mx));
            sum += NormalMath.Density((x - mx) / sx) / sx * width * (NormalMath.Phi((tol - m) / rest) - NormalMath.Phi((-tol - m) / rest));
        }
        return Math.Min(1, sum);
    }
}
