namespace Closemown.Turf;

/// <summary>What each decision is expected to cost from one exact state, read off the solved values.</summary>
internal sealed class PlanChoices(PlanProblem p, PlanSolver solved)
{
    private readonly PlanGrid grid = solved.Grid;

    /// <summary>What is lost from a morning on if nobody mows.</summary>
    /// <param name="t">The day.</param>
    /// <param name="canopyMm">Standing height, mm.</param>
    /// <param name="stress">Stress.</param>
    /// <param name="level">What the turf is used to.</param>
    /// <param name="phase">What the last mowings bind, that morning.</param>
    /// <param name="stays">What they bind after the day.</param>
    public double NotMown(int t, double canopyMm, double stress, int level, int phase, int stays) =>
        After(t, canopyMm, level, stress, stays) + solved.Prices.Standing(canopyMm, t) + solved.Prices.OffWish(level, phase, canopyMm, t) + (p.Losses.Stress * stress);

    /// <summary>The same if it is mown; with the change of height, if it takes one.</summary>
    public double Mown(int t, double canopyMm, double stress, PlanMove move, double setMm) =>
        After(t, Math.Min(canopyMm, move.CutMm), move.Level, stress, move.Phase) + solved.Prices.Mowing(canopyMm, move.CutMm, grid.LevelsMm[move.Level], t) + (p.Losses.Stress * stress)
        + solved.Prices.Stressed(stress, canopyMm, move.CutMm) + (PlanMoves.Sets(move.CutMm, setMm) ? p.Losses.HeightChange : 0);

    private double After(int t, double canopyMm, int level, double stress, int phase)
    {
        var s = Math.Clamp(stress, 0, PlanGrid.StressLevels - 1);
        var low = Math.Min((int)s, PlanGrid.StressLevels - 2);
        var up = s - low;
        var after = solved.After[t];
        var i = grid.At(canopyMm, out var f);
        var a = grid.Row(level, low, phase) + i;
        var v = after[a] + (f * (after[a + 1] - after[a]));
        if (up == 0) return v;
        var b = grid.Row(level, low + 1, phase) + i;
        return v + (up * (after[b] + (f * (after[b + 1] - after[b])) - v));
    }
}
