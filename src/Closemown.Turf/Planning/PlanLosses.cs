namespace Closemown.Turf;

/// <summary>What things cost, in mowings. Assumptions, no source; the last four are this planner's own and no part of what a season is counted by.</summary>
/// <remarks>A mowing over one third costs <see cref="OverThird"/> and <see cref="ExcessShare"/> times the share above a third; over one half <see cref="OverHalf"/> more.</remarks>
public sealed record PlanLosses
{
    public double Mowing { get; init; } = 1;

    public double HeightChange { get; init; } = 0.3;

    public double OverThird { get; init; } = 2;

    /// <summary>For each 1 of share above a third.</summary>
    public double ExcessShare { get; init; } = 12;

    public double OverHalf { get; init; } = 6;

    /// <summary>A cut below the green base.</summary>
    public double Scalp { get; init; } = 12;

    /// <summary>A day on which the turf stands out of the band around the wish.</summary>
    public double OutOfBand { get; init; } = 0.25;

    /// <summary>For each mm above that band, a day.</summary>
    public double AboveBand { get; init; } = 0.3;

    /// <summary>For each unit of stress, a day.</summary>
    public double Stress { get; init; } = 0.8;

    /// <summary>For each mm that the cut is kept above the wish, a day, once the wish is due; a quarter of it before. Keeps a wish from being put off for ever.</summary>
    public double AboveWish { get; init; } = 0.15;

    /// <summary>Once, for each mm that the cut is off the wish on the day it falls due.</summary>
    public double WishMissed { get; init; } = 5;

    /// <summary>For each unit of stress at the mowing, times the share removed: a stressed plant regrows from less.</summary>
    public double StressedShare { get; init; } = 2;

    /// <summary>How much dearer a scalp is to the plan than it is counted: the green base is known badly where it matters, after turf stood tall.</summary>
    public double ScalpGuard { get; init; } = 2;
}
