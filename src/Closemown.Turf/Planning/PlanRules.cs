namespace Closemown.Turf;

/// <summary>Limits that a plan keeps whatever it costs. Common practice, no source.</summary>
public static class PlanRules
{
    /// <summary>Lower by at most so much a step, mm.</summary>
    public const double LowerMm = 0.5;

    /// <summary>Mowings from one lowering to the next.</summary>
    public const int MowingsApart = 3;

    /// <summary>Share of the leaf that is taken only after asking.</summary>
    public const double AskShare = 1.0 / 3;

    /// <summary>Stress from which nothing is lowered and only a light trim is given.</summary>
    public const double StressedFrom = 1.0;

    /// <summary>The most that a light trim takes.</summary>
    public const double TrimShare = 0.2;

    /// <summary>Probability of stress or wilting from which a day counts as stressed.</summary>
    public const double StressedProbability = 0.4;

    /// <summary>Probability of frost, flood or frozen soil from which a day is left out.</summary>
    public const double OffProbability = 0.5;

    /// <summary>Days before a match without a lap, and without sand.</summary>
    public const int NoLapDays = 2, NoSandDays = 10;

    /// <summary>The band about the wished height: half a mm under to half as high again.</summary>
    public const double BandUnderMm = 0.5, BandOverShare = 1.5;

    /// <summary>Person there on a usual day, and on another.</summary>
    public const double UsualDay = 0.85, OtherDay = 0.07;
}
