using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Closemown.Estimation;

/// <summary>Sums and products of rows of any length, four numbers at a time: what one pass of moment matching consists of.</summary>
/// <remarks>Every number is worked out by itself in the same order whatever the machine's registers hold.</remarks>
internal static class SpanMath
{
    private const int Lanes = 4;

    /// <summary>into += by · row.</summary>
    public static void Add(Span<double> into, ReadOnlySpan<double> row, double by)
    {
        row = row[..into.Length];
        Add(ref MemoryMarshal.GetReference(into), ref MemoryMarshal.GetReference(row), by, into.Length);
    }

    /// <summary>square −= row · rowᵀ; both halves come out alike to the bit.</summary>
    public static void LessOuter(Span<double> square, ReadOnlySpan<double> row)
    {
        var n = row.Length;
        square = square[..(n * n)];
        ref var s = ref MemoryMarshal.GetReference(row);
        ref var t = ref MemoryMarshal.GetReference(square);
        for (var i = 0; i < n; i++)
        {
            Add(ref t, ref s, -Unsafe.Add(ref s, i), n);
            t = ref Unsafe.Add(ref t, n);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Add(ref double t, ref double s, double by, int n)
    {
        var i = 0;
        for (; i + Lanes <= n; i += Lanes)
            (Vector256.LoadUnsafe(ref t, (nuint)i) + (by * Vector256.LoadUnsafe(ref s, (nuint)i))).StoreUnsafe(ref t, (nuint)i);
        for (; i < n; i++) Unsafe.Add(ref t, i) += by * Unsafe.Add(ref s, i);
    }

    /// <summary>into = (into + other)/2.</summary>
    public static void Mean(Span<double> into, ReadOnlySpan<double> other)
    {
        other = other[..into.Length];
        ref var t = ref MemoryMarshal.GetReference(into);
        ref var s = ref MemoryMarshal.GetReference(other);
        var i = 0;
        for (; i + Lanes <= into.Length; i += Lanes)
            ((Vector256.LoadUnsafe(ref t, (nuint)i) + Vector256.LoadUnsafe(ref s, (nuint)i)) * 0.5).StoreUnsafe(ref t, (nuint)i);
        for (; i < into.Length; i++) into[i] = (into[i] + other[i]) * 0.5;
    }

    /// <summary>Whether no number is infinite or none.</summary>
    public static bool AllFinite(ReadOnlySpan<double> row)
    {
        ref var s = ref MemoryMarshal.GetReference(row);
        var i = 0;
        var worst = Vector256<double>.Zero;               // 0 · x is 0 for what is finite, and no number else
        for (; i + Lanes <= row.Length; i += Lanes) worst += Vector256<double>.Zero * Vector256.LoadUnsafe(ref s, (nuint)i);
        var finite = Vector256.EqualsAll(worst, Vector256<double>.Zero);
        for (; i < row.Length; i++) finite &= double.IsFinite(row[i]);
        return finite;
    }

    /// <summary>Lists the numbers that are not zero, with their places from <paramref name="first"/> on, behind <paramref name="count"/> others; returns how many are listed then.</summary>
    public static int NonZero(ReadOnlySpan<double> row, int first, Span<int> place, Span<double> value, int count)
    {
        ref var s = ref MemoryMarshal.GetReference(row);
        var i = 0;
        for (; i + Lanes <= row.Length; i += Lanes)
        {
            var zero = Vector256.Equals(Vector256.LoadUnsafe(ref s, (nuint)i), Vector256<double>.Zero);
            for (var rest = ~zero.ExtractMostSignificantBits() & 15; rest != 0; rest &= rest - 1)
            {
                var at = i + BitOperations.TrailingZeroCount(rest);
                (place[count], value[count++]) = (first + at, row[at]);
            }
        }

        for (; i < row.Length; i++)
        {
            if (row[i] != 0) (place[count], value[count++]) = (first + i, row[i]);
        }

        return count;
    }
}
