namespace Closemown.Turf;

/// <summary>The heights a plan is reckoned on: standing heights in equal steps, and the cuts that can be set.</summary>
internal sealed class PlanGrid
{
    public const int StressLevels = 4, LoweringCounts = PlanLimits.LowerApart;
    private const double FineMm = 0.25, Same = 0.05, Roundoff = 1e-9;
    private const int MostCanopies = 160;

    public PlanGrid(PlanProblem p)
    {
        var last = p.LastCutMm ?? p.CutMm.Mean;
        var top = Math.Min(p.HighestMm, Math.Max(Math.Max(p.WishMm, last) + 4.5, (p.CanopyMm.Mean * 2 / 3) + 1));
        List<double> cuts = [p.WishMm];
        // What stands exactly in the record comes before what only fills the gaps.
        Add(last);
        if (p.CutMm.Mean >= p.LowestMm && p.CutMm.Mean <= p.HighestMm) Add(p.CutMm.Mean);
        for (var c = p.WishMm + PlanLimits.LowerMm; c <= top; c += PlanLimits.LowerMm) Add(c);
        for (var c = last + PlanLimits.LowerMm; c < p.WishMm; c += PlanLimits.LowerMm) Add(c);
        cuts.Sort();
        CutsMm = [.. cuts];
        // What is called the same height is one point, so that no rounding makes a change of it.
        Last = Nearest(last);
        CutsMm[Last] = last;
        Wish = Nearest(p.WishMm);
        Set = Nearest(p.CutMm.Mean);
        Allowed = [.. CutsMm.Select(c => c >= p.LowestMm - Roundoff && c <= p.HighestMm + Roundoff)];
        var low = Math.Max(0.25, CutsMm[0] - 1);
        var high = Math.Max(Math.Max(p.CanopyMm.Mean + (3 * p.CanopyMm.Sd) + 4, 3.5 * p.WishMm), CutsMm[^1] + 4);
        StepMm = Math.Max(FineMm, (high - low) / (MostCanopies - 1));
        LowMm = low;
        Canopies = (int)Math.Ceiling((high - low) / StepMm) + 1;

        void Add(double c)
        {
            if (!cuts.Exists(x => Math.Abs(x - c) < Same)) cuts.Add(c);
        }
    }

    public double[] CutsMm { get; }

    public bool[] Allowed { get; }

    public int Cuts => CutsMm.Length;

    public int Canopies { get; }

    public double LowMm { get; }

    public double StepMm { get; }

    /// <summary>The cut of the last mowing, of the wish, and as the machine is set.</summary>
    public int Last { get; }

    /// <inheritdoc cref="Last"/>
    public int Wish { get; }

    /// <inheritdoc cref="Last"/>
    public int Set { get; }

    public int Size => Canopies * Cuts * StressLevels * LoweringCounts;

    public double CanopyMm(int i) => LowMm + (i * StepMm);

    /// <summary>Where a row of standing heights begins.</summary>
    public int Row(int cut, int stress, int lowering) => ((((lowering * StressLevels) + stress) * Cuts) + cut) * Canopies;

    /// <summary>Whether going from one cut to another is a step down that the rule allows.</summary>
    public bool StepDown(int from, int to) => to < from && CutsMm[from] - CutsMm[to] <= PlanLimits.LowerMm + Roundoff;

    /// <summary>Point and weight of the next one for a standing height; past the ends the last slope goes on.</summary>
    public int At(double canopyMm, out double share)
    {
        var x = (canopyMm - LowMm) / StepMm;
        var i = Math.Clamp((int)x, 0, Canopies - 2);
        share = Math.Max(0, x - i);
        return i;
    }

    public double In(double[] row, int start, double canopyMm)
    {
        var i = At(canopyMm, out var f);
        return row[start + i] + (f * (row[start + i + 1] - row[start + i]));
    }

    private int Nearest(double mm)
    {
        var best = 0;
        for (var i = 1; i < CutsMm.Length; i++)
        {
            if (Math.Abs(CutsMm[i] - mm) < Math.Abs(CutsMm[best] - mm)) best = i;
        }
        return best;
    }
}
