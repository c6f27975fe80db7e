namespace Closemown.Turf;

/// <summary>What the last mowings were, as far as they bind the next one: the numbers of a state of <see cref="PlanSolver"/>.</summary>
/// <remarks>
/// 0 to <see cref="MayLower"/>: cut last at the height that the turf is used to, so many mowings after the last lowering. A cut above that height is one mowing and the way back another, so after them it may be lowered.
/// </remarks>
internal static class PlanPhase
{
    /// <summary>Cut last at the used height, and the next mowing may go lower.</summary>
    public const int MayLower = PlanLimits.LowerApart - 1;

    /// <summary>Cut last above the used height.</summary>
    public const int Raised = MayLower + 1;

    /// <summary>The same within the days that must lie between: in the morning, mown the day before; after the day's decision, mown that day.</summary>
    public const int JustRaised = Raised + 1;

    public const int Count = JustRaised + 1;

    /// <summary>After a day without a mowing.</summary>
    public static int Unmown(int phase) => phase == JustRaised ? Raised : phase;

    /// <summary>After a mowing at the used height.</summary>
    public static int AtUsed(int phase) => phase < MayLower ? phase + 1 : MayLower;

    /// <summary>Where a plan begins.</summary>
    public static int Start(PlanProblem p) =>
        p.DaysSinceRaised is { } days ? days < PlanLimits.ComingDownApart ? JustRaised : Raised
        : Math.Clamp(p.MowingsSinceLowering ?? MayLower, 0, MayLower);
}
