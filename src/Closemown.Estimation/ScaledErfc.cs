namespace Closemown.Estimation;

/// <summary>exp(x²)·erfc(x) by rational Chebyshev approximation.</summary>
/// <remarks>
/// W. J. Cody 1969, Rational Chebyshev approximations for the error function, Math. Comp. 23:631–637,
/// doi:10.1090/S0025-5718-1969-0247736-4. Relative error near the machine epsilon.
/// </remarks>
internal static class ScaledErfc
{
    private const double InverseRootPi = 0.56418958354775628695;

    private static ReadOnlySpan<double> A => [3.16112374387056560e00, 1.13864154151050156e02, 3.77485237685302021e02,
        3.20937758913846947e03, 1.85777706184603153e-1];

    private static ReadOnlySpan<double> B => [2.36012909523441209e01, 2.44024637934444173e02, 1.28261652607737228e03,
        2.84423683343917062e03];

    private static ReadOnlySpan<double> C => [5.64188496988670089e-1, 8.88314979438837594e0, 6.61191906371416295e01,
        2.98635138197400131e02, 8.81952221241769090e02, 1.71204761263407058e03, 2.05107837782607147e03,
        1.23033935479799725e03, 2.15311535474403846e-8];

    private static ReadOnlySpan<double> D => [1.57449261107098347e01, 1.17693950891312499e02, 5.37181101862009858e02,
        1.62138957456669019e03, 3.29079923573345963e03, 4.36261909014324716e03, 3.43936767414372164e03,
        1.23033935480374942e03];

    private static ReadOnlySpan<double> P => [3.05326634961232344e-1, 3.60344899949804439e-1, 1.25781726111229246e-1,
        1.60837851487422766e-2, 6.58749161529837803e-4, 1.63153871373020978e-2];

    private static ReadOnlySpan<double> Q => [2.56852019228982242e00, 1.87295284992346725e00, 5.27905102951428412e-1,
        6.05183413124413191e-2, 2.33520497626869185e-3];

    /// <summary>erf(x) for |x| ≤ 0.46875.</summary>
    public static double SmallErf(double x)
    {
        var y = x * x;
        var top = A[4] * y;
        var bottom = y;
        for (var i = 0; i < 3; i++)
        {
            top = (top + A[i]) * y;
            bottom = (bottom + B[i]) * y;
        }

        return x * (top + A[3]) / (bottom + B[3]);
    }

    /// <summary>exp(x²)·erfc(x) for x ≥ 0.</summary>
    public static double OfPositive(double x)
    {
        if (x <= 0.46875) return Math.Exp(x * x) * (1 - SmallErf(x));
        if (x <= 4)
        {
            var top = C[8] * x;
            var bottom = x;
            for (var i = 0; i < 7; i++)
            {
                top = (top + C[i]) * x;
                bottom = (bottom + D[i]) * x;
            }

            return (top + C[7]) / (bottom + D[7]);
        }

        if (x > 1e8) return InverseRootPi / x;
        var z = 1 / (x * x);
        var over = P[5] * z;
        var under = z;
        for (var i = 0; i < 4; i++)
        {
            over = (over + P[i]) * z;
            under = (under + Q[i]) * z;
        }

        return (InverseRootPi - (z * (over + P[4]) / (under + Q[4]))) / x;
    }

    /// <summary>exp(−x²) without losing the digits of x².</summary>
    public static double ExpMinusSquare(double x)
    {
        var whole = Math.Truncate(x * 16) / 16;
        return Math.Exp(-whole * whole) * Math.Exp(-(x - whole) * (x + whole));
    }

    /// <summary>erfc(x) for any x.</summary>
    public static double Erfc(double x)
    {
        var y = Math.Abs(x);
        if (y <= 0.46875) return 1 - SmallErf(x);
        var tail = y > 27.3 ? 0 : OfPositive(y) * ExpMinusSquare(y);
        return x > 0 ? tail : 2 - tail;
    }
}
