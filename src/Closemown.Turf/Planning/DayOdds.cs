namespace Closemown.Turf;

/// <summary>What the traces say of each day by itself: growth in a few equally likely sizes, and how likely a day is off or stressed.</summary>
internal sealed class DayOdds
{
    /// <summary>Sizes of growth.</summary>
    public const int Sizes = 5;

    public DayOdds(PlanProblem p)
    {
        (GrowthMm, Off, Barred, StressMean, MeanGrowthMm) = (new double[p.Days * Sizes], new double[p.Days], new double[p.Days], new double[p.Days], new double[p.Days]);
        var column = new double[p.Traces];
        for (var d = 0; d < p.Days; d++)
        {
            int off = 0, barred = 0;
            var stress = 0.0;
            for (var s = 0; s < p.Traces; s++)
            {
                var i = (s * p.Days) + d;
                column[s] = p.GrowthMm[i];
                if (p.Off[i]) off++;
                if (p.Wilting[i] || p.Stress[i] >= PlanRules.StressedFrom) barred++;
                stress += Math.Max(0, p.Stress[i]);
            }
            (Off[d], Barred[d], StressMean[d]) = (off / (double)p.Traces, barred / (double)p.Traces, stress / p.Traces);
            Array.Sort(column);
            for (var q = 0; q < Sizes; q++)
            {
                int from = q * p.Traces / Sizes, to = Math.Max(from + 1, (q + 1) * p.Traces / Sizes);
                var sum = 0.0;
                for (var s = from; s < to; s++) sum += column[Math.Min(s, p.Traces - 1)];
                GrowthMm[(d * Sizes) + q] = sum / (to - from);
            }
            MeanGrowthMm[d] = column.Average();
        }
    }

    /// <summary>By day, then size.</summary>
    public double[] GrowthMm { get; }

    public double[] MeanGrowthMm { get; }

    /// <summary>Probability that a day keeps off.</summary>
    public double[] Off { get; }

    /// <summary>Probability that lowering is barred.</summary>
    public double[] Barred { get; }

    public double[] StressMean { get; }
}
