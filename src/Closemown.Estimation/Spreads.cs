namespace Closemown.Estimation;

/// <summary>Which factors take part in a solution, and with what spread: the model's own unless the options say otherwise.</summary>
internal static class Spreads
{
    /// <summary>Sets the spreads and the lists of Gaussian and interval factors of the workspace.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A given spread is out of range, or there is no such factor.</exception>
    public static void Fill(ChainModel model, SolveOptions options, Workspace w)
    {
        var rows = model.Rows;
        w.Sd = rows.Sd;
        if (options.SpreadByGroup is { Length: > 0 } groups) ByGroup(rows, groups, w.OwnSd());
        if (options.SpreadOf is { Count: > 0 } given) OneByOne(rows, given, w.OwnSd());
        (w.GaussianCount, w.IntervalCount) = (0, 0);
        for (var k = 0; k < rows.Count; k++)
        {
            if (!rows.Interval[k]) w.GaussianList[w.GaussianCount++] = k;
            else if (w.Sd[k] < double.PositiveInfinity) w.IntervalList[w.IntervalCount++] = k;
        }
    }

    private static void ByGroup(FactorRows rows, double[] scale, double[] sd)
    {
        for (var g = 0; g < scale.Length; g++)
        {
            if (!(scale[g] > 0 && double.IsFinite(scale[g])))
                throw new ArgumentOutOfRangeException(nameof(scale), scale[g], ErrorText.GroupSpread(g, scale[g]));
        }

        for (var k = 0; k < rows.Count; k++)
        {
            if (!rows.Interval[k] || rows.Group[k] >= scale.Length) continue;
            sd[k] = rows.Sd[k] * scale[rows.Group[k]];
            CheckSharpness(rows, k, sd[k]);
        }
    }

    private static void OneByOne(FactorRows rows, IReadOnlyDictionary<int, double> given, double[] sd)
    {
        foreach (var (k, value) in given)
        {
            if ((uint)k >= (uint)rows.Count) throw new ArgumentOutOfRangeException(nameof(given), k, ErrorText.NoFactor(k, rows.Count));
            if (!(value > 0 && (double.IsFinite(value) || rows.Interval[k])))
                throw new ArgumentOutOfRangeException(nameof(given), value, ErrorText.FactorSpread(k, value));
            sd[k] = value;
            if (double.IsFinite(value)) CheckSharpness(rows, k, value);
        }
    }

    private static void CheckSharpness(FactorRows rows, int k, double sd)
    {
        for (var p = rows.Start[k]; p < rows.Start[k + 1]; p++)
        {
            if (!ChainModel.Holds(rows.Weight[p], sd)) throw new ArgumentOutOfRangeException(nameof(sd), sd, ErrorText.TooSharp(rows.Weight[p], sd));
        }
    }
}
