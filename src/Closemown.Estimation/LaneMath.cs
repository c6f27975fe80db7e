using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Closemown.Estimation;

/// <summary>What is reckoned with four numbers at a time and must come out alike on every processor.</summary>
/// <remarks>
/// The framework's own vector functions fuse multiplying and adding only where the processor does, call the C library where it has no
/// wide registers, and add the lanes in an order of their own.
/// Here every product and every sum is rounded by itself, in the order written, which any processor of 64 bits does alike.
/// </remarks>
internal static class LaneMath
{
    private const double PerLog2 = 1.4426950408889634;
    private const double Log2High = 0.693147180369123816490;      // 33 bits, so that whole multiples are exact
    private const double Log2Low = 1.90821492927058770002e-10;
    private const double Rounder = 6755399441055744.0;            // 1.5 · 2⁵²: added and taken away again it rounds to a whole number

    /// <summary>exp(x) of each lane, to about 1e-16 relative.</summary>
    /// <param name="x">From −700 to 700; beyond that the result means nothing.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<double> Exp(Vector256<double> x)
    {
        var whole = (x * PerLog2) + Vector256.Create(Rounder);
        var n = whole - Vector256.Create(Rounder);
        var r = (x - (n * Log2High)) - (n * Log2Low);             // |r| ≤ log(2)/2
        var r2 = r * r;
        var r4 = r2 * r2;
        // The series up to r¹³/13!, in pairs and fours: the rest is below 1e-17.
        var low = Pair(1.0 / 2, 1.0 / 6, r) + (r2 * Pair(1.0 / 24, 1.0 / 120, r));
        var middle = Pair(1.0 / 720, 1.0 / 5040, r) + (r2 * Pair(1.0 / 40320, 1.0 / 362880, r));
        var high = Pair(1.0 / 3628800, 1.0 / 39916800, r) + (r2 * Pair(1.0 / 479001600, 1.0 / 6227020800, r));
        var e = Vector256<double>.One + (r + (r2 * (low + (r4 * (middle + (r4 * high))))));
        return (e.AsInt64() + (whole.AsInt64() << 52)).AsDouble();   // times 2ⁿ
    }

    /// <summary>The four lanes added up: the first two, the last two, then both.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Sum(Vector256<double> x) => x[0] + x[1] + (x[2] + x[3]);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Pair(double a, double b, Vector256<double> r) => Vector256.Create(a) + (b * r);
}
