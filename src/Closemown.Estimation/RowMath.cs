using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Closemown.Estimation;

/// <summary>The one inner loop of the chain's algebra: rows of numbers less multiples of other rows, four numbers at a time.</summary>
/// <remarks>
/// Rows are padded to <see cref="Pad"/> so that no loop has a rest. Every number is a chain of fused multiply-adds in a fixed order, and no
/// sum runs across a row but in <see cref="Dot"/>, so the width of the machine's registers does not show in the result.
/// </remarks>
internal static class RowMath
{
    private const int Lanes = 4;

    /// <summary>The length a row of n numbers is given.</summary>
    public static int Pad(int n) => (n + Lanes - 1) / Lanes * Lanes;

    /// <summary>For each of <paramref name="rows"/> rows i: target_i −= Σ_k weight[i·weightRow + k·weightStep] · source_k, k below <paramref name="count"/>.</summary>
    public static void Subtract(
        double[] target, int targetAt, int targetRow, int rows, double[] weight, int weightAt, int weightRow, int weightStep,
        double[] source, int sourceAt, int sourceRow, int count, int length)
    {
        if (rows <= 0 || count <= 0 || length <= 0) return;
        Within(target, targetAt + ((rows - 1) * targetRow) + length);
        Within(weight, weightAt + ((rows - 1) * weightRow) + ((count - 1) * weightStep) + 1);
        Within(source, sourceAt + ((count - 1) * sourceRow) + length);
        for (var i = 0; i < rows; i++)
        {
            ref var w = ref At(weight, weightAt + (i * weightRow));
            ref var t = ref At(target, targetAt + (i * targetRow));
            ref var s = ref At(source, sourceAt);
            var c = 0;
            for (; c + (4 * Lanes) <= length; c += 4 * Lanes) Four(ref Unsafe.Add(ref t, c), ref w, weightStep, ref Unsafe.Add(ref s, c), sourceRow, count);
            for (; c + (2 * Lanes) <= length; c += 2 * Lanes) Two(ref Unsafe.Add(ref t, c), ref w, weightStep, ref Unsafe.Add(ref s, c), sourceRow, count);
            for (; c < length; c += Lanes) One(ref Unsafe.Add(ref t, c), ref w, weightStep, ref Unsafe.Add(ref s, c), sourceRow, count);
        }
    }

    /// <summary>Row times a number.</summary>
    public static void Scale(double[] row, int at, int length, double by)
    {
        Within(row, at + length);
        ref var r = ref At(row, at);
        for (var c = 0; c < length; c += Lanes) (Vector256.LoadUnsafe(ref r, (nuint)c) * by).StoreUnsafe(ref r, (nuint)c);
    }

    /// <summary>Σ of two rows' products.</summary>
    public static double Dot(double[] a, int aAt, double[] b, int bAt, int length)
    {
        Within(a, aAt + length);
        Within(b, bAt + length);
        ref var x = ref At(a, aAt);
        ref var y = ref At(b, bAt);
        var sum = Vector256<double>.Zero;
        for (var c = 0; c < length; c += Lanes) sum = Vector256.FusedMultiplyAdd(Vector256.LoadUnsafe(ref x, (nuint)c), Vector256.LoadUnsafe(ref y, (nuint)c), sum);
        return sum[0] + sum[1] + (sum[2] + sum[3]);
    }

    private static void Four(ref double t, ref double w, int weightStep, ref double s, int sourceRow, int count)
    {
        var a = Vector256.LoadUnsafe(ref t);
        var b = Vector256.LoadUnsafe(ref t, Lanes);
        var c = Vector256.LoadUnsafe(ref t, 2 * Lanes);
        var d = Vector256.LoadUnsafe(ref t, 3 * Lanes);
        for (var k = 0; k < count; k++)
        {
            var by = Vector256.Create(-w);
            a = Vector256.FusedMultiplyAdd(by, Vector256.LoadUnsafe(ref s), a);
            b = Vector256.FusedMultiplyAdd(by, Vector256.LoadUnsafe(ref s, Lanes), b);
            c = Vector256.FusedMultiplyAdd(by, Vector256.LoadUnsafe(ref s, 2 * Lanes), c);
            d = Vector256.FusedMultiplyAdd(by, Vector256.LoadUnsafe(ref s, 3 * Lanes), d);
            w = ref Unsafe.Add(ref w, weightStep);
            s = ref Unsafe.Add(ref s, sourceRow);
        }

        a.StoreUnsafe(ref t);
        b.StoreUnsafe(ref t, Lanes);
        c.StoreUnsafe(ref t, 2 * Lanes);
        d.StoreUnsafe(ref t, 3 * Lanes);
    }

    private static void Two(ref double t, ref double w, int weightStep, ref double s, int sourceRow, int count)
    {
        var a = Vector256.LoadUnsafe(ref t);
        var b = Vector256.LoadUnsafe(ref t, Lanes);
        for (var k = 0; k < count; k++)
        {
            var by = Vector256.Create(-w);
            a = Vector256.FusedMultiplyAdd(by, Vector256.LoadUnsafe(ref s), a);
            b = Vector256.FusedMultiplyAdd(by, Vector256.LoadUnsafe(ref s, Lanes), b);
            w = ref Unsafe.Add(ref w, weightStep);
            s = ref Unsafe.Add(ref s, sourceRow);
        }

        a.StoreUnsafe(ref t);
        b.StoreUnsafe(ref t, Lanes);
    }

    private static void One(ref double t, ref double w, int weightStep, ref double s, int sourceRow, int count)
    {
        var a = Vector256.LoadUnsafe(ref t);
        for (var k = 0; k < count; k++)
        {
            a = Vector256.FusedMultiplyAdd(Vector256.Create(-w), Vector256.LoadUnsafe(ref s), a);
            w = ref Unsafe.Add(ref w, weightStep);
            s = ref Unsafe.Add(ref s, sourceRow);
        }

        a.StoreUnsafe(ref t);
    }

    private static ref double At(double[] values, int at) => ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(values), at);

    private static void Within(double[] values, int end)
    {
        if ((uint)end > (uint)values.Length) throw new ArgumentOutOfRangeException(nameof(end));
    }
}
