namespace Closemown.Turf;

/// <summary>What things cost in a plan, in mowings: one mowing is 1. Assumptions, no source; each can be set.</summary>
public sealed record PlanLosses
{
    /// <summary>One mowing.</summary>
    public double Mowing { get; init; } = 1;

    /// <summary>A change of height.</summary>
    public double Change { get; init; } = 0.3;

    /// <summary>A mowing that takes more than a third, and each whole share more.</summary>
    public double OverThird { get; init; } = 2;

    /// <inheritdoc cref="OverThird"/>
    public double OverThirdPerShare { get; init; } = 12;

    /// <summary>A mowing that takes more than half, at least.</summary>
    public double OverHalf { get; init; } = 6;

    /// <summary>A scalp.</summary>
    public double Scalp { get; init; } = 12;

    /// <summary>A day out of the band about the wished height.</summary>
    public double OutOfBand { get; init; } = 0.25;

    /// <summary>A mm above that band, a day.</summary>
    public double AbovePerMm { get; init; } = 0.3;

    /// <summary>A unit of stress, a day.</summary>
    public double Stress { get; init; } = 0.8;

    /// <summary>How much of a stressed day's cost taller turf saves: so much times the share by which it stands over the wish.</summary>
    public double TallRelief { get; init; } = 0.5;

    /// <summary>The setting a mm above the wish, a day, once the wish is due: what makes a raised cut come back down.</summary>
    public double AboveWishPerMm { get; init; } = 0.04;

    /// <summary>A mm of leaf above the wish on the day of a match.</summary>
    public double FixturePerMm { get; init; } = 0.4;
}
