namespace Closemown.Turf;

/// <summary>What the mowings so far leave to the next one, as a plan is followed day by day.</summary>
/// <param name="Level">What the turf is used to: a level of the grid.</param>
/// <param name="Bound">What the last mowings bind, the days after a raised one apart.</param>
/// <param name="DaysSince">Days since the last mowing where that was above the used height, that morning.</param>
/// <param name="SetMm">What the machine would leave as it is set, mm.</param>
internal readonly record struct PlanState(int Level, int Bound, int DaysSince, double SetMm)
{
    private const double SameSetMm = 0.15;

    public static PlanState Start(PlanProblem p, PlanGrid grid)
    {
        // A machine set to a height within what a mowing scatters is set to it.
        double[] known = [grid.LevelsMm[grid.Used], p.WishMm];
        var near = known.Where(mm => Math.Abs(mm - p.CutMm.Mean) <= SameSetMm).Append(p.CutMm.Mean).First();
        return new(grid.Used, p.DaysSinceRaised is null ? PlanPhase.Start(p) : PlanPhase.Raised, p.DaysSinceRaised ?? PlanLimits.ComingDownApart, near);
    }

    /// <summary>Whether it was cut last above the used height.</summary>
    public bool IsRaised => Bound == PlanPhase.Raised;

    /// <summary>The phase in the morning.</summary>
    public int Phase => IsRaised && DaysSince < PlanLimits.ComingDownApart ? PlanPhase.JustRaised : Bound;

    /// <summary>Days until the next mowing may be.</summary>
    public int Waits => IsRaised ? Math.Max(0, PlanLimits.ComingDownApart - DaysSince) : 0;

    /// <summary>The next morning after a day without a mowing.</summary>
    public PlanState Unmown() => this with { DaysSince = DaysSince + 1 };

    /// <summary>The next morning after a mowing.</summary>
    public static PlanState After(PlanMove move) => move.Phase == PlanPhase.JustRaised
        ? new(move.Level, PlanPhase.Raised, 1, move.CutMm) : new(move.Level, move.Phase, PlanLimits.ComingDownApart, move.CutMm);
}
