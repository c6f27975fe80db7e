namespace Closemown.Turf;

/// <summary>What a plan is reckoned on: standing heights in equal steps, and the heights that the turf is or may become used to.</summary>
internal sealed class PlanGrid
{
    public const int StressLevels = 4;
    private const double FineMm = 0.25, Same = 0.05, Roundoff = 1e-9;
    private const int MostCanopies = 160;

    public PlanGrid(PlanProblem p)
    {
        var used = p.UsedMm ?? p.CutMm.Mean;
        List<double> levels = [p.WishMm];
        for (var c = p.WishMm + PlanLimits.LowerMm; c < used - Same; c += PlanLimits.LowerMm) levels.Add(c);
        // What is called the same height is one point, so that no rounding makes a change of it.
        var near = levels.FindIndex(c => Math.Abs(c - used) < Same);
        if (near >= 0) levels[near] = used;
        else levels.Add(used);
        levels.Sort();
        LevelsMm = [.. levels];
        Used = levels.IndexOf(used);
        Wish = Nearest(p.WishMm);
        Allowed = [.. LevelsMm.Select(c => c >= p.LowestMm - Roundoff && c <= p.HighestMm + Roundoff)];
        var low = Math.Max(0.25, LevelsMm[0] - 1);
        var high = Math.Max(Math.Max(p.CanopyMm.Mean + (3 * p.CanopyMm.Sd) + 4, 3.5 * p.WishMm), LevelsMm[^1] + 4);
        StepMm = Math.Max(FineMm, (high - low) / (MostCanopies - 1));
        LowMm = low;
        Canopies = (int)Math.Ceiling((high - low) / StepMm) + 1;
    }

    /// <summary>Heights the turf may be used to, mm, rising.</summary>
    public double[] LevelsMm { get; }

    /// <summary>Whether the machine can be set to each.</summary>
    public bool[] Allowed { get; }

    public int Levels => LevelsMm.Length;

    public int Canopies { get; }

    public double LowMm { get; }

    public double StepMm { get; }

    /// <summary>The level that the turf is used to on the first morning.</summary>
    public int Used { get; }

    /// <summary>The level of the wish.</summary>
    public int Wish { get; }

    public int Size => Canopies * Levels * StressLevels * PlanPhase.Count;

    public double CanopyMm(int i) => LowMm + (i * StepMm);

    /// <summary>Where a row of standing heights begins.</summary>
    public int Row(int level, int stress, int phase) => ((((phase * StressLevels) + stress) * Levels) + level) * Canopies;

    /// <summary>Whether going from one level to another is a step down that the rule allows, as exactly as a hand sets it.</summary>
    /// <remarks>A height kept a little off a level must not be stuck there.</remarks>
    public bool StepDown(int from, int to) => to < from && LevelsMm[from] - LevelsMm[to] <= PlanLimits.LowerMm + Same + Roundoff;

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
        for (var i = 1; i < LevelsMm.Length; i++)
        {
            if (Math.Abs(LevelsMm[i] - mm) < Math.Abs(LevelsMm[best] - mm)) best = i;
        }
        return best;
    }
}
