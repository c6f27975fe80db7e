namespace Closemown.Estimation;

/// <summary>How improbable a reading was, as a number from 0 (never) to 1 (as expected).</summary>
public static class Surprise
{
    /// <summary>The summed probability of all categories no more probable than the one read.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The category does not exist.</exception>
    public static double OfCategory(ReadOnlySpan<double> probabilities, int read)
    {
        if ((uint)read >= (uint)probabilities.Length)
            throw new ArgumentOutOfRangeException(nameof(read), read, ErrorText.Category(read, probabilities.Length));
        var limit = probabilities[read] * (1 + 1e-12);
        var sum = 0.0;
        foreach (var p in probabilities)
        {
            if (p <= limit) sum += p;
        }

        return Math.Min(1, sum);
    }

    /// <summary>The two-sided probability of a number at least as far from the mean as <paramref name="value"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The variance is not positive and finite.</exception>
    public static double OfNumber(double mean, double variance, double value)
    {
        if (!(variance > 0 && double.IsFinite(variance)))
            throw new ArgumentOutOfRangeException(nameof(variance), variance, $"The variance must be positive, but is {ErrorText.N(variance)}.");
        return Math.Min(1, 2 * NormalMath.UpperTail(Math.Abs(value - mean) / Math.Sqrt(variance)));
    }

    /// <summary>The probability that the smallest of n independent surprises is at most the smallest here: 1 − (1 − min)ⁿ.</summary>
    /// <remarks>Šidák 1967, J. Am. Stat. Assoc. 62:626.</remarks>
    /// <exception cref="ArgumentException">There are none, or one lies outside 0 to 1.</exception>
    public static double OfSeveral(ReadOnlySpan<double> p)
    {
        if (p.IsEmpty) throw new ArgumentException("There is no surprise to combine.", nameof(p));
        var least = 1.0;
        foreach (var one in p)
        {
            if (!(one >= 0 && one <= 1)) throw new ArgumentException($"A probability lies within 0 and 1, but is {ErrorText.N(one)}.", nameof(p));
            least = Math.Min(least, one);
        }

        return least == 1 ? 1 : -NormalMath.Expm1(p.Length * NormalMath.Log1p(-least));
    }
}
