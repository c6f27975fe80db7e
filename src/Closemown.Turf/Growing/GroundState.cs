namespace Closemown.Turf;

/// <summary>Why a day keeps everyone off the turf; several may hold at once.</summary>
[Flags]
public enum KeepOff
{
    /// <summary>Nothing does.</summary>
    None = 0,

    /// <summary>The air freezes in the night. Grass that freezes on a milder night thaws in the forenoon: look before mowing.</summary>
    Frost = 1,

    /// <summary>The soil is frozen.</summary>
    FrozenSoil = 2,

    /// <summary>Thawed on top, frozen below: the worst for roots, the whole day.</summary>
    ThawedOverFrozen = 4,

    /// <summary>The soil is full of water.</summary>
    Saturated = 8,
}

/// <summary>Frost in the soil, day by day, from air temperature.</summary>
/// <remarks>
/// A sum of cold, °C·day, that grows with the day's mean below zero and shrinks with the mean above it; soil counts as frozen from <see cref="FrozenFrom"/> on. An assumption in the way of
/// degree-day indices of freezing, no source for turf: what is underfoot beats it.
/// </remarks>
public static class GroundState
{
    /// <summary>Cold stored from which soil counts as frozen, °C·day.</summary>
    public const double FrozenFrom = 2.5;

    /// <summary>Greatest temperature above which a frozen soil thaws on top, °C.</summary>
    public const double ThawsFromC = 1.5;

    /// <summary>Water that must run through in a day for the soil to count as full, mm.</summary>
    public const double SaturatedFromMm = 6;

    private const double Most = 30, ThawShare = 0.8;

    /// <summary>Cold stored after a day, °C·day.</summary>
    /// <param name="coldSum">Before it, 0 or more.</param>
    /// <param name="meanC">The day's mean temperature, °C.</param>
    public static double After(double coldSum, double meanC) => Math.Clamp(coldSum - (meanC < 0 ? meanC : ThawShare * meanC), 0, Most);

    /// <summary>What the day's ground keeps off.</summary>
    /// <param name="coldSum">Cold stored at its end, °C·day.</param>
    /// <param name="day">The day.</param>
    /// <param name="drainedMm">Water that ran through, mm.</param>
    public static KeepOff Of(double coldSum, in FilledDay day, double drainedMm)
    {
        var off = KeepOff.None;
        if (FrostRisk.Of(day.TMinC) == Frost.AirFrost) off |= KeepOff.Frost;
        if (coldSum >= FrozenFrom) off |= day.TMaxC >= ThawsFromC ? KeepOff.ThawedOverFrozen : KeepOff.FrozenSoil;
        if (drainedMm >= SaturatedFromMm) off |= KeepOff.Saturated;
        return off;
    }
}
