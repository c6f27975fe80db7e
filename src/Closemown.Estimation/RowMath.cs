using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Closemown.Estimation;

/// <summary>Numbers at equal distances in an array: a row, a column or a block, from <paramref name="at"/> on.</summary>
/// <param name="values">The array.</param>
/// <param name="at">The first number.</param>
/// <param name="row">From one row to the next.</param>
/// <param name="step">From one number of a row to the next, where it is read one by one.</param>
internal readonly ref struct Strip(double[] values, int at, int row, int step = 1)
{
    public readonly double[] Values = values;
    public readonly int At = at, Row = row, Step = step;

    public ref double First => ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(Values), At);

    /// <summary>Checked once before a loop, so that the loop needs no checks.</summary>
    public void Holds(int rows, int length)
    {
        if (At < 0 || (uint)(At + ((rows - 1) * Row) + ((length - 1) * Step)) >= (uint)Values.Length) throw new ArgumentOutOfRangeException(nameof(length));
    }
}

/// <summary>The one inner loop of the chain's algebra: rows of numbers less multiples of other rows, several numbers at a time.</summary>
/// <remarks>
/// Rows are padded to <see cref="Pad"/> so that no loop has a rest. Every number is a chain of fused multiply-adds in a fixed order, and no
/// sum runs across a row but in <see cref="Dot"/>, so the width of the machine's registers does not show in the result.
/// </remarks>
internal static class RowMath
{
    private const int Lanes = 4;

    /// <summary>The length a row of n numbers is given.</summary>
    public static int Pad(int n) => (n + Lanes - 1) / Lanes * Lanes;

    /// <summary>target_i −= Σ_k weight_ik · source_k for each row i; a <paramref name="fresh"/> target counts as zero before.</summary>
    public static void Subtract(Strip target, int rows, int length, Strip weight, Strip source, int count, bool fresh = false)
    {
        if (rows <= 0 || length <= 0 || (count <= 0 && !fresh)) return;
        target.Holds(rows, length);
        if (count > 0)
        {
            weight.Holds(rows, count);
            source.Holds(count, length);
        }

        ref var t = ref target.First;
        ref var w = ref weight.First;
        for (var i = 0; i < rows; i++)
        {
            ref var s = ref source.First;
            var c = 0;
            for (; c + (4 * Lanes) <= length; c += 4 * Lanes) Four(ref Unsafe.Add(ref t, c), ref w, weight.Step, ref Unsafe.Add(ref s, c), source.Row, count, fresh);
            for (; c + (2 * Lanes) <= length; c += 2 * Lanes) Two(ref Unsafe.Add(ref t, c), ref w, weight.Step, ref Unsafe.Add(ref s, c), source.Row, count, fresh);
            for (; c < length; c += Lanes) One(ref Unsafe.Add(ref t, c), ref w, weight.Step, ref Unsafe.Add(ref s, c), source.Row, count, fresh);
            t = ref Unsafe.Add(ref t, target.Row);
            w = ref Unsafe.Add(ref w, weight.Row);
        }
    }

    /// <summary>A row times a number.</summary>
    public static void Scale(Strip row, int length, double by)
    {
        row.Holds(1, length);
        ref var r = ref row.First;
        for (var c = 0; c < length; c += Lanes) (Vector256.LoadUnsafe(ref r, (nuint)c) * by).StoreUnsafe(ref r, (nuint)c);
    }

    /// <summary>Rows times a number, as columns: target_ji = by · source_ij.</summary>
    public static void Turn(Strip source, int rows, int columns, Strip target, double by = 1)
    {
        if (rows <= 0 || columns <= 0) return;
        source.Holds(rows, columns);
        target.Holds(columns, rows);
        ref var s = ref source.First;
        ref var t = ref target.First;
        for (var i = 0; i < rows; i++)
        {
            for (var j = 0; j < columns; j++) Unsafe.Add(ref t, (j * target.Row) + i) = by * Unsafe.Add(ref s, j);
            s = ref Unsafe.Add(ref s, source.Row);
        }
    }

    /// <summary>The upper triangle below as well, so that both halves agree to the bit.</summary>
    public static void Mirror(Strip square, int n)
    {
        if (n <= 1) return;
        square.Holds(n, n);
        ref var a = ref square.First;
        for (var i = 0; i < n; i++)
        {
            for (var j = i + 1; j < n; j++) Unsafe.Add(ref a, (j * square.Row) + i) = Unsafe.Add(ref a, (i * square.Row) + j);
        }
    }

    /// <summary>Σ of two rows' products.</summary>
    public static double Dot(Strip a, Strip b, int length)
    {
        a.Holds(1, length);
        b.Holds(1, length);
        ref var x = ref a.First;
        ref var y = ref b.First;
        var sum = Vector256<double>.Zero;
        for (var c = 0; c < length; c += Lanes) sum = Vector256.FusedMultiplyAdd(Vector256.LoadUnsafe(ref x, (nuint)c), Vector256.LoadUnsafe(ref y, (nuint)c), sum);
        return LaneMath.Sum(sum);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Four(ref double t, ref double w, int weightStep, ref double s, int sourceRow, int count, bool fresh)
    {
        var a = fresh ? Vector256<double>.Zero : Vector256.LoadUnsafe(ref t);
        var b = fresh ? Vector256<double>.Zero : Vector256.LoadUnsafe(ref t, Lanes);
        var c = fresh ? Vector256<double>.Zero : Vector256.LoadUnsafe(ref t, 2 * Lanes);
        var d = fresh ? Vector256<double>.Zero : Vector256.LoadUnsafe(ref t, 3 * Lanes);
        for (; count > 0; count--)
        {
            var by = -Vector256.Create(w);
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

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Two(ref double t, ref double w, int weightStep, ref double s, int sourceRow, int count, bool fresh)
    {
        var a = fresh ? Vector256<double>.Zero : Vector256.LoadUnsafe(ref t);
        var b = fresh ? Vector256<double>.Zero : Vector256.LoadUnsafe(ref t, Lanes);
        for (; count > 0; count--)
        {
            var by = -Vector256.Create(w);
            a = Vector256.FusedMultiplyAdd(by, Vector256.LoadUnsafe(ref s), a);
            b = Vector256.FusedMultiplyAdd(by, Vector256.LoadUnsafe(ref s, Lanes), b);
            w = ref Unsafe.Add(ref w, weightStep);
            s = ref Unsafe.Add(ref s, sourceRow);
        }

        a.StoreUnsafe(ref t);
        b.StoreUnsafe(ref t, Lanes);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void One(ref double t, ref double w, int weightStep, ref double s, int sourceRow, int count, bool fresh)
    {
        var a = fresh ? Vector256<double>.Zero : Vector256.LoadUnsafe(ref t);
        for (; count > 0; count--)
        {
            a = Vector256.FusedMultiplyAdd(-Vector256.Create(w), Vector256.LoadUnsafe(ref s), a);
            w = ref Unsafe.Add(ref w, weightStep);
            s = ref Unsafe.Add(ref s, sourceRow);
        }

        a.StoreUnsafe(ref t);
    }
}
