namespace Closemown.Estimation;

/// <summary>The normal distribution with relative accuracy in its tails.</summary>
public static class NormalMath
{
    internal const double Root2 = 1.4142135623730950488;
    internal const double RootHalfPi = 1.2533141373155002512;
    internal const double LogRoot2Pi = 0.91893853320467274178;
    internal const double InverseRoot2Pi = 0.39894228040143267794;

    /// <summary>The density φ(x) = exp(−x²/2)/√2π; zero where it is below double range.</summary>
    public static double Density(double x) => InverseRoot2Pi * ExpMinusHalfSquare(x);

    /// <summary>log φ(x).</summary>
    public static double LogDensity(double x) => (-0.5 * x * x) - LogRoot2Pi;

    /// <summary>The distribution Φ(x), to about 1e-15 relative down to the smallest numbers. Cody 1969 by erfc.</summary>
    public static double Phi(double x) => UpperTail(-x);

    /// <summary>1 − Φ(x) without forming the difference.</summary>
    public static double UpperTail(double x)
    {
        if (x < RootSmall) return x > -RootSmall ? 0.5 * (1 - ScaledErfc.SmallErf(x / Root2)) : 1 - UpperTail(-x);
        return x > 38.6 ? 0 : 0.5 * ScaledErfc.OfPositive(x / Root2) * ExpMinusHalfSquare(x);
    }

    /// <summary>log Φ(x), finite for every finite x to about ±1e154.</summary>
    public static double LogPhi(double x) => x < -1
        ? Math.Log(0.5 * ScaledErfc.OfPositive(-x / Root2)) - (0.5 * x * x)
        : Log1p(-UpperTail(x));

    /// <summary>The Mills ratio (1 − Φ(x))/φ(x) for x ≥ 0.</summary>
    internal static double Mills(double x) => RootHalfPi * ScaledErfc.OfPositive(x / Root2);

    /// <summary>Φ(b) − Φ(a) for a ≤ b, both limits taken on the same side; right to rounding of the larger tail.</summary>
    internal static double Mass(double a, double b)
    {
        if (a > 0) return UpperTail(a) - UpperTail(b);
        if (b < 0) return UpperTail(-b) - UpperTail(-a);
        return 1 - UpperTail(-a) - UpperTail(b);
    }

    /// <summary>log(1 + x) without losing small x.</summary>
    internal static double Log1p(double x)
    {
        var u = 1 + x;
        if (u == 1) return x;
        return double.IsFinite(u) && u > 0 ? Math.Log(u) * (x / (u - 1)) : Math.Log(u);
    }

    /// <summary>exp(x) − 1 without losing small x.</summary>
    internal static double Expm1(double x)
    {
        if (Math.Abs(x) > 0.5) return Math.Exp(x) - 1;
        var half = 2 * Math.Sinh(0.5 * x);
        return half * Math.Exp(0.5 * x);
    }

    /// <summary>The x with Φ(x) = p for 0 ≤ p ≤ 1 (±infinity at the ends).</summary>
    /// <remarks>M. J. Wichura 1988, Algorithm AS 241, Appl. Statist. 37:477, PPND16: about 1e-16 relative.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">p lies outside 0 to 1 or is not a number.</exception>
    public static double InversePhi(double p)
    {
        if (!(p >= 0 && p <= 1)) throw new ArgumentOutOfRangeException(nameof(p), p, $"A probability lies within 0 and 1, but is {ErrorText.N(p)}.");
        if (p == 0) return double.NegativeInfinity;
        if (p == 1) return double.PositiveInfinity;
        return InverseNormal.Quantile(p);
    }

    private const double RootSmall = 0.46875 * Root2;

    private static double ExpMinusHalfSquare(double x)
    {
        var y = Math.Abs(x);
        if (y > 38.7) return 0;
        var whole = Math.Truncate(y * 16) / 16;
        return Math.Exp(-0.5 * whole * whole) * Math.Exp(-0.5 * (y - whole) * (y + whole));
    }
}
