namespace Closemown.Turf;

/// <summary>The rules that no price overrides. Common practice, no source.</summary>
public static class PlanLimits
{
    /// <summary>The most that a mowing may go lower than the one before, mm.</summary>
    public const double LowerMm = 0.5;

    /// <summary>A lowering is at the earliest the third mowing after the last one.</summary>
    public const int LowerApart = 3;

    /// <summary>Stress from which nothing is lowered: slight or more, on the scale of 0 to 3.</summary>
    public const double StressedFrom = 1;

    /// <summary>The most of the leaf that any planned mowing takes; where the kept cut would take more, the turf comes down in steps. Up to it the price decides, with asking first over a third.</summary>
    public const double MostShare = 2.0 / 3;

    /// <summary>What a mowing takes on the way down after overgrowth: a little under a third, as no height is read exactly.</summary>
    public const double ComingDownShare = 0.3;

    /// <summary>The most that a mowing takes on the way down, where much grows until the next.</summary>
    public const double MostOnTheWay = 0.5;

    /// <summary>What it may stand at, at the next mowing on the way, as a share of what it stands at now: else it comes down too slowly, or not at all.</summary>
    public const double ComingDownTo = 0.9;

    /// <summary>Days from one mowing on the way down to the next.</summary>
    public const int ComingDownApart = 2;

    /// <summary>The band around the wish: this much under it, mm, to <see cref="BandTop"/> times it.</summary>
    public const double BandUnderMm = 0.5;

    /// <inheritdoc cref="BandUnderMm"/>
    public const double BandTop = 1.5;

    /// <summary>Lapping no later than this before a match, days.</summary>
    public const int LapBeforeDays = 2;

    /// <summary>Sand no later than this before a match, days.</summary>
    public const int SandBeforeDays = 10;

    /// <summary>A wish counts as reachable from this probability.</summary>
    public const double Reached = 0.8;

    /// <summary>Longest horizon shown, days.</summary>
    public const int MostDays = 60;

    /// <summary>Shortest horizon solved, days: a shorter plan looks this far all the same, or it would put mowing off.</summary>
    public const int LeastSolvedDays = 18;
}
