namespace Closemown.Entries;

/// <summary>Starting values that a <c>unit</c> entry may set, by name: each is [mean, sd] in the unit of its name.</summary>
public static class PriorNames
{
    public static IReadOnlyList<string> All { get; } =
    [
        "clearanceUm", "edgeUm", "bowUm", "stripUm", "clickUm", "lostMotionUm", "openingUmPerHour", "openingUmPerOuting",
        "dullingUmPerHour", "lapUmPerMinute", "touchUm", "paperOffsetUm", "heightShiftUm", "repeatShare",
        "benchMm", "screwMmPerTurn", "pullShare", "lostTurns", "lockShiftMm", "gaugeSdMm", "gaugeZeroMm",
        "sinkMm", "sinkWetMm", "sinkSoftMm", "sinkGroovedMm",
    ];
}
