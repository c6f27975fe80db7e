namespace Closemown.Turf;

/// <summary>What each decision is expected to cost from one exact state, read off the solved values.</summary>
internal sealed class PlanChoices(PlanProblem p, PlanSolver solved)
{
    private readonly PlanGrid grid = solved.Grid;

    /// <summary>What is lost from a morning on if nobody mows.</summary>
    public double NotMown(int t, double canopyMm, double stress, int last, int lowering) =>
        After(t, canopyMm, last, stress, lowering) + solved.Prices.Standing(canopyMm, t) + solved.Prices.OffWish(last, t) + (p.Losses.Stress * stress);

    /// <summary>The same if it is mown to a cut, the change of height apart.</summary>
    public double Mown(int t, double canopyMm, double stress, int last, int cut, int lowering)
    {
        var cutMm = grid.CutsMm[cut];
        var m = cut < last ? 0 : Math.Min(lowering + 1, PlanGrid.LoweringCounts - 1);
        return After(t, Math.Min(canopyMm, cutMm), cut, stress, m) + grid.In(solved.Mowing[t], cut * grid.Canopies, canopyMm)
            + (p.Losses.Stress * stress) + (p.Losses.StressedShare * stress * Math.Max(0, (canopyMm - cutMm) / canopyMm));
    }

    /// <summary>The same if it is mown above the cut that is kept, on the way down to it.</summary>
    public double Trimmed(int t, double canopyMm, double stress, int kept, double cutMm)
    {
        var left = Math.Min(canopyMm, cutMm);
        return After(t, left, kept, stress, 0) + p.Losses.Mowing + PlanPrices.Over(canopyMm, cutMm, p.CanopySdMm, p.CutMm.Sd, p.Losses) + solved.Prices.Standing(left, t)
            + solved.Prices.OffWish(kept, t) + (p.Losses.Stress * stress) + (p.Losses.StressedShare * stress * Math.Max(0, (canopyMm - cutMm) / canopyMm));
    }

    /// <summary>Whether a cut may be mown to, given the last one.</summary>
    public bool May(int t, int last, int set, int cut, bool wilting, double stress, int lowering)
    {
        if (!grid.Allowed[cut] || (!solved.Calendar.CanChange[t] && cut != set)) return false;
        if (cut >= last) return true;
        return grid.StepDown(last, cut) && !wilting && stress < PlanLimits.StressedFrom && lowering >= PlanGrid.LoweringCounts - 1;
    }

    private double After(int t, double canopyMm, int cut, double stress, int lowering)
    {
        var s = Math.Clamp(stress, 0, PlanGrid.StressLevels - 1);
        var low = Math.Min((int)s, PlanGrid.StressLevels - 2);
        var up = s - low;
        var after = solved.After[t];
        var i = grid.At(canopyMm, out var f);
        var a = grid.Row(cut, low, lowering) + i;
        var v = after[a] + (f * (after[a + 1] - after[a]));
        if (up == 0) return v;
        var b = grid.Row(cut, low + 1, lowering) + i;
        return v + (up * (after[b] + (f * (after[b + 1] - after[b])) - v));
    }
}
