namespace Closemown.Height;

/// <summary>Where each unknown of the height model stands: four states after each turn, locking or mowing, and sixteen constants; mm unless said.</summary>
public static class HeightLayout
{
    /// <summary>Bench height at the left reading, as the unit's gauge reads it with the nuts tight; the right one follows.</summary>
    public const int Left = 0;
    public const int Right = 1;

    /// <summary>What the day of the last mowing adds to the cut: the grain.</summary>
    public const int Grain = 2;

    /// <summary>What the season adds to the sink of every area: ground grows softer and firmer again.</summary>
    public const int Season = 3;
    public const int StateSize = 4;

    /// <summary>What a turn of a screw raises its own side: left, then right; mm a turn.</summary>
    public const int Turn = 0;

    /// <summary>What a turn of the other screw raises this side: left, then right; mm a turn.</summary>
    public const int Pull = 2;

    /// <summary>Lost motion on a change of direction: left, then right.</summary>
    public const int Lost = 4;

    /// <summary>What the gauge reads too much.</summary>
    public const int Zero = 6;

    /// <summary>What tightening the nuts adds: left, then right.</summary>
    public const int Lock = 7;

    public const int SinkWet = 9;
    public const int SinkSoft = 10;
    public const int SinkGrooved = 11;

    /// <summary>Sink of the first area mown; the next follow.</summary>
    public const int Sink = 12;

    /// <summary>Areas with a sink of their own; those beyond share the last.</summary>
    public const int AreaCount = 4;
    public const int ConstantCount = Sink + AreaCount;

    public static IReadOnlyList<string> StateNames { get; } = ["bench height left", "bench height right", "grain", "season"];

    public static IReadOnlyList<string> ConstantNames { get; } =
    [
        "turn left", "turn right", "pull on left", "pull on right", "lost motion left", "lost motion right", "gauge zero",
        "lock shift left", "lock shift right", "sink when wet", "sink when soft", "sink of a grooved roller",
        "sink of area 1", "sink of area 2", "sink of area 3", "sink of area 4",
    ];
}
