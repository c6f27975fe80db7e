using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Closemown.Estimation;

/// <summary>log(Φ(b − η) − Φ(a − η)) and its derivatives by η, exact in the tails and for narrow intervals.</summary>
/// <remarks>
/// With Z = Φ(b) − Φ(a): f = log Z, f′ = (φ(a) − φ(b))/Z = mean of the standard normal kept to [a, b],
/// f″ = (aφ(a) − bφ(b))/Z − f′² = variance of the same − 1. The limits are mirrored so that the middle is not negative. Then either
/// the moments of the kept part are integrated by Gauss–Legendre around the middle (nothing is subtracted, so narrow intervals are safe), or,
/// where the far limit weighs little, they are those of a whole tail less those beyond the far limit, or, for wide
/// intervals around zero, log1p of the two outer tails. See Rasmussen and Williams 2006, Gaussian Processes for
/// Machine Learning, 3.6 and 3.9 for the one-sided case.
/// </remarks>
public static class IntervalLikelihood
{
    /// <summary>Value and derivatives at η = 0.</summary>
    /// <param name="a">The low limit in units of the spread; −infinity for none.</param>
    /// <param name="b">The high limit, above <paramref name="a"/>; infinity for none.</param>
    /// <param name="f">log(Φ(b) − Φ(a)), not positive.</param>
    /// <param name="f1">The first derivative by η.</param>
    /// <param name="f2">The second derivative, within −1 and 0.</param>
    /// <exception cref="ArgumentException">a is not below b, or one of them is not a number.</exception>
    public static void Evaluate(double a, double b, out double f, out double f1, out double f2)
    {
        if (!(a < b)) throw new ArgumentException(ErrorText.Limits(a, b), nameof(a));
        Moments(a, b, b - a, out f, out f1, out f2, out _);
    }

    /// <summary>The same with the width given apart, and with the kept variance 1 + f″ to relative accuracy.</summary>
    internal static void Moments(double a, double b, double width, out double f, out double f1, out double f2, out double variance)
    {
        if (a + b < 0)
        {
            Right(-b, -a, width, out f, out f1, out f2, out variance);
            f1 = -f1;
        }
        else if (double.IsNaN(a + b))
        {
            (f, f1, f2, variance) = double.IsNaN(a) || double.IsNaN(b) ? (double.NaN, double.NaN, double.NaN, double.NaN) : (0, 0, 0, 1);
        }
        else
        {
            Right(a, b, width, out f, out f1, out f2, out variance);
        }
    }

    /// <summary>The case a + b ≥ 0.</summary>
    private static void Right(double a, double b, double w, out double f, out double f1, out double f2, out double variance)
    {
        var drop = 0.5 * w * (a + b);
        if (a < 0 ? w <= 3 : drop <= 12) Middle(0.5 * (a + b), 0.5 * w, out f, out f1, out f2, out variance);
        else if (a < 0) Around(a, b, drop, out f, out f1, out f2, out variance);
        else Tail(a, b, w, drop, out f, out f1, out f2, out variance);
    }

    private static void Middle(double m, double half, out double f, out double f1, out double f2, out double variance)
    {
        Vector256<double> sum0 = default, sum1 = default, sum2 = default;
        ref var nodes = ref MemoryMarshal.GetArrayDataReference(GaussLegendre.Nodes);
        ref var weights = ref MemoryMarshal.GetArrayDataReference(GaussLegendre.Weights);
        for (nuint i = 0; i < GaussLegendre.Room; i += 4)
        {
            var s = half * Vector256.LoadUnsafe(ref nodes, i);
            var weight = Vector256.LoadUnsafe(ref weights, i);
            var square = s * s;
            var below = weight * LaneMath.Exp((m * s) - (0.5 * square));
            var above = weight * LaneMath.Exp((-m * s) - (0.5 * square));
            sum0 += below + above;
            sum1 += s * (above - below);
            sum2 += square * (below + above);
        }

        double s0 = LaneMath.Sum(sum0), s1 = LaneMath.Sum(sum1), s2 = LaneMath.Sum(sum2);
        var shift = s1 / s0;
        f = NormalMath.LogDensity(m) + Math.Log(half) + Math.Log(s0);
        f1 = m + shift;
        variance = (s2 / s0) - (shift * shift);
        f2 = variance - 1;
    }

    private static void Tail(double a, double b, double w, double drop, out double f, out double f1, out double f2, out double variance)
    {
        var near = new TailMoments(a);
        double i0 = near.I0, i1 = near.I1, i2 = near.I2;
        if (drop < 60)
        {
            var scale = Math.Exp(-drop);
            var far = new TailMoments(b);
            i0 -= scale * far.I0;
            i1 -= scale * (far.I1 + (w * far.I0));
            i2 -= scale * (far.I2 + (2 * w * far.I1) + (w * w * far.I0));
        }

        var excess = i1 / i0;
        f = NormalMath.LogDensity(a) + Math.Log(i0);
        f1 = a + excess;
        variance = (i2 / i0) - (excess * excess);
        f2 = variance - 1;
    }

    private static void Around(double a, double b, double drop, out double f, out double f1, out double f2, out double variance)
    {
        var low = NormalMath.Density(a);
        var high = double.IsInfinity(b) ? 0 : NormalMath.Density(b);
        var outside = NormalMath.UpperTail(-a) + NormalMath.UpperTail(b);
        var z = 1 - outside;
        f = NormalMath.Log1p(-outside);
        f1 = -low * NormalMath.Expm1(-drop) / z;
        f2 = (((low == 0 ? 0 : a * low) - (high == 0 ? 0 : b * high)) / z) - (f1 * f1);
        variance = 1 + f2;
    }
}
