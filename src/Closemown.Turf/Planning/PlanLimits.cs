namespace Closemown.Turf;

/// <summary>The rules that no price overrides. Common practice, no source.</summary>
/// <remarks>The first of them is <see cref="ThirdRule.Share"/>: no planned mowing takes more of the leaf, by the middle of what is known of standing height and cut.</remarks>
public static class PlanLimits
{
    /// <summary>The most that a mowing may go below the height that the turf is used to, mm.</summary>
    public const double LowerMm = 0.5;

    /// <summary>A lowering is at the earliest the third mowing after the last one.</summary>
    public const int LowerApart = 3;

    /// <summary>What a planned mowing takes at least, as a share of the leaf: for less nobody gets the mower out.</summary>
    public const double LeastShare = 0.05;

    /// <summary>Stress from which nothing is lowered: slight or more, on the scale of 0 to 3.</summary>
    public const double StressedFrom = 1;

    /// <summary>How far ahead it must grow for a lower height, days.</summary>
    public const int LowerAheadDays = 14;

    /// <summary>What must grow in these days, as a share of the height that the turf is used to: about what one mowing takes.</summary>
    public const double LowerAheadShare = 0.4;

    /// <summary>Turf stays used to a height for this long after it was last cut to it, days.</summary>
    public const int UsedDays = 21;

    /// <summary>Days from a mowing above the used height to the next mowing.</summary>
    public const int ComingDownApart = 2;

    /// <summary>A cut above the used height and the third is for stressed turf, or where the lower one would scalp oftener than this.</summary>
    public const double ScalpAtMost = 0.1;

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

    /// <summary>Longest horizon, days: a year.</summary>
    public const int MostDays = 366;

    /// <summary>Shortest horizon solved, days: a shorter plan looks this far all the same, or it would put mowing off.</summary>
    public const int LeastSolvedDays = 18;
}
