using Closemown.Entries;

namespace Closemown.Height;

/// <summary>
/// Starting values of the height before a unit has taught anything, in mm unless named otherwise. All are common practice or assumption, no source;
/// those with a name can be set by <c>priors</c> of a <c>unit</c> entry.
/// </summary>
public static class HeightDefaults
{
    /// <summary>Bench height nobody has read: the range of close-mown turf and beyond. Name <c>benchMm</c>.</summary>
    public static Prior BenchMm { get; } = new(6, 6);

    /// <summary>How tightly the two sides of an unread unit go together (correlation).</summary>
    public const double SidesTogether = 0.9;

    /// <summary>Height a turn of the screw makes on its own side, untold: an M8 thread and a generous spread. Name <c>screwMmPerTurn</c>.</summary>
    public static Prior MmPerTurn { get; } = new(1.25, 0.25);

    /// <summary>How far off a told thread may be, as a share.</summary>
    public const double ToldThreadShare = 0.05;

    /// <summary>Pull of one side on the other, as a share of a turn's own move. Name <c>pullShare</c>.</summary>
    public static Prior PullShare { get; } = new(0.15, 0.06);

    /// <summary>Lost motion on reversal, turns. Name <c>lostTurns</c>.</summary>
    public static Prior LostTurns { get; } = new(0.12, 0.05);

    /// <summary>Where a hand stops, turns.</summary>
    public const double HandTurns = 0.012;

    /// <summary>The smallest turn worth making.</summary>
    public const double SmallestTurn = 0.02;

    /// <summary>More noise, as a share of the lost motion, where the direction before is not known: none of the slack or all of it may be in the way.</summary>
    public const double UnknownSlackShare = 0.4;

    /// <summary>More noise at any reversal, as a share of the lost motion: slack is not taken up alike each time.</summary>
    public const double ReversalShare = 0.1;

    /// <summary>What tightening the nuts shifts, the same each time: mostly up to 0.06 either way, with some nuts twice that, and two tightenings are to tell it. Name <c>lockShiftMm</c>.</summary>
    public static Prior LockShiftMm { get; } = new(0, 0.06);

    /// <summary>What tightening scatters.</summary>
    public const double LockScatterMm = 0.015;

    /// <summary>Knocks between two sittings, each side.</summary>
    public const double KnockMm = 0.05;

    /// <summary>What a hit moves, a grind of the bedknife, a rebuild: a side.</summary>
    public const double StrikeMm = 0.1;

    public const double GrindMm = 0.3;
    public const double RebuildMm = 1.5;

    /// <summary>Scatter of a reading with a gauge nobody described. Dial bar 0.02, bar and screw 0.04, ruler 0.15. Name <c>gaugeSdMm</c> (its mean counts).</summary>
    public const double GaugeSdMm = 0.035;

    /// <summary>The gauge's zero: what it reads too much. Name <c>gaugeZeroMm</c>.</summary>
    public static Prior GaugeZeroMm { get; } = new(0, 0.08);

    /// <summary>Sink of a unit on firm, dry, smooth-rollered ground: what is left of 0.6 ± 0.45 untold (firm walk-behind 0.4 ± 0.35, soft 0.8 ± 0.5). Name <c>sinkMm</c>.</summary>
    public static Prior SinkMm { get; } = new(0.6, 0.45);

    /// <summary>More sink where it is wet. Name <c>sinkWetMm</c>.</summary>
    public static Prior SinkWetMm { get; } = new(0.15, 0.15);

    /// <summary>Sink of soft against firm ground: half of it more where soft, half less where firm, none where it was not said. Name <c>sinkSoftMm</c>.</summary>
    public static Prior SinkSoftMm { get; } = new(0.4, 0.25);

    /// <summary>More sink with a grooved front roller. Name <c>sinkGroovedMm</c>.</summary>
    public static Prior SinkGroovedMm { get; } = new(0.15, 0.15);

    /// <summary>A day's own part of the sink: the grain.</summary>
    public const double GrainMm = 0.1;

    /// <summary>How far the sink wanders from one mowing to the next as the season makes the ground softer or firmer: 0.1 in ten mowings.</summary>
    public const double SeasonMm = 0.03;

    /// <inheritdoc cref="SpotHeights.SdMm"/>
    public static IReadOnlyDictionary<string, double> CanopySdMm => SpotHeights.SdMm;

    /// <summary>How well a bench height told with a mowing is known, where nothing was gauged since the screws were turned.</summary>
    public const double ToldBenchSdMm = 0.1;
}
