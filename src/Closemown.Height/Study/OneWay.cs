namespace Closemown.Height;

/// <summary>One-way analysis of variance: whether groups differ by more than their readings scatter.</summary>
/// <param name="F">Mean square between over mean square within.</param>
/// <param name="P">Probability of an F at least so large where the groups do not differ.</param>
/// <param name="WithinSd">Scatter within a group, in the readings' unit.</param>
/// <param name="BetweenSd">Scatter of the groups' own values, in the readings' unit; 0 where the means differ by no more than the readings do.</param>
/// <remarks>Source: any text on analysis of variance; checked against NIST StRD SiRstv.</remarks>
public sealed record OneWay(double F, double P, double WithinSd, double BetweenSd)
{
    /// <summary>Analyses groups of readings.</summary>
    /// <exception cref="ArgumentException">There are fewer than two groups, or no group was read twice.</exception>
    public static OneWay Of(IReadOnlyList<IReadOnlyList<double>> groups)
    {
        ArgumentNullException.ThrowIfNull(groups);
        var n = groups.Sum(g => g.Count);
        if (groups.Count < 2 || groups.Any(g => g.Count == 0)) throw new ArgumentException("Two groups of readings are needed at least, none of them empty.", nameof(groups));
        if (n == groups.Count) throw new ArgumentException("No group was read twice: read one setting again to see the scatter.", nameof(groups));
        // Taken about the first reading, so that large heights do not eat up the digits.
        var zero = groups[0][0];
        var means = groups.Select(g => g.Average(v => v - zero)).ToArray();
        var mean = groups.Sum(g => g.Sum(v => v - zero)) / n;
        double between = 0, within = 0, squares = 0;
        for (var i = 0; i < groups.Count; i++)
        {
            between += groups[i].Count * (means[i] - mean) * (means[i] - mean);
            within += groups[i].Sum(v => (v - zero - means[i]) * (v - zero - means[i]));
            squares += (double)groups[i].Count * groups[i].Count;
        }
        int above = groups.Count - 1, below = n - groups.Count;
        double msb = between / above, msw = within / below, size = (n - (squares / n)) / above;
        return new(msb / msw, IncompleteBeta.FAbove(msb / msw, above, below), Math.Sqrt(msw), Math.Sqrt(Math.Max(0, (msb - msw) / size)));
    }
}
