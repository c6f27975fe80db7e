namespace Closemown.Estimation;

/// <summary>Checks a predictor's terms and brings them into a row: sorted local positions, repeated ones added up.</summary>
internal static class Predictor
{
    /// <summary>Fills <paramref name="local"/> and <paramref name="weight"/> (each as long as the terms); returns how many positions are in use and the first step.</summary>
    public static int ToRow(ReadOnlySpan<Term> terms, int d, int m, int steps, Span<int> local, Span<double> weight, out int step)
    {
        step = FirstStep(terms, steps);
        var count = 0;
        foreach (var term in terms)
        {
            Check(term, d, m);
            if (term.Weight == 0) continue;
            var at = term.IsConstant ? (2 * d) + term.Index : ((term.Step - step) * d) + term.Index;
            var p = count;
            while (p > 0 && local[p - 1] > at) p--;
            if (p > 0 && local[p - 1] == at)
            {
                weight[p - 1] += term.Weight;
                continue;
            }

            for (var q = count; q > p; q--) (local[q], weight[q]) = (local[q - 1], weight[q - 1]);
            (local[p], weight[p]) = (at, term.Weight);
            count++;
        }

        return count;
    }

    public static void Check(Term term, int d, int m)
    {
        if (!double.IsFinite(term.Weight)) throw new ArgumentException(ErrorText.NotFinite("A weight", term.Weight));
        if (term.IsConstant)
        {
            if (term.Index >= m) throw new ArgumentException(ErrorText.ConstantOutside(term.Index, m));
        }
        else if (term.Index >= d)
        {
            throw new ArgumentException(ErrorText.ComponentOutside(term.Index, d));
        }
    }

    private static int FirstStep(ReadOnlySpan<Term> terms, int steps)
    {
        int first = int.MaxValue, last = -1;
        foreach (var term in terms)
        {
            if (term.IsConstant) continue;
            if (term.Step >= steps) throw new ArgumentException(ErrorText.StepOutside(term.Step, steps), nameof(terms));
            first = Math.Min(first, term.Step);
            last = Math.Max(last, term.Step);
        }

        if (last < 0) return -1;
        if (last - first > 1) throw new ArgumentException(ErrorText.NotNeighbours(first, last), nameof(terms));
        return first;
    }
}
