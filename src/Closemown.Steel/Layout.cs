namespace Closemown.Steel;

/// <summary>Where each unknown of the steel model stands: seven states after each action and fifteen constants.</summary>
public static class Layout
{
    public const int ClearanceLeft = 0;
    public const int ClearanceRight = 1;

    /// <summary>First of the three edges: left, centre, right.</summary>
    public const int Edge = 2;

    public const int Bow = 5;
    public const int Strip = 6;
    public const int StateSize = 7;

    /// <summary>One click, mean of the sides, µm.</summary>
    public const int Click = 0;

    /// <summary>Half the difference between the sides' clicks, left + / right −, µm.</summary>
    public const int ClickSide = 1;

    /// <summary>Opening an hour: left, then right.</summary>
    public const int OpeningPerHour = 2;

    /// <summary>Opening an outing: left, then right.</summary>
    public const int OpeningPerOuting = 4;

    /// <summary>Lost motion on a change of direction: left, then right.</summary>
    public const int LostMotion = 6;

    public const int Dulling = 8;
    public const int Touch = 9;
    public const int PaperOffset = 10;

    /// <summary>How far this turf's clean limit is from the one stated.</summary>
    public const int CleanOffset = 11;

    /// <summary>Opening a minute of lapping, shared by all grits.</summary>
    public const int LapOpening = 12;

    /// <summary>What coarse (up to 100) and fine grits differ from the shared value.</summary>
    public const int LapCoarse = 13;
    public const int LapFine = 14;
    public const int ConstantCount = 15;

    public static IReadOnlyList<string> StateNames { get; } =
        ["clearance left", "clearance right", "edge left", "edge centre", "edge right", "bow", "strip error"];

    public static IReadOnlyList<string> ConstantNames { get; } =
    [
        "click", "click difference", "opening per hour left", "opening per hour right", "opening per outing left",
        "opening per outing right", "lost motion left", "lost motion right", "dulling per hour", "touch offset",
        "paper offset", "clean limit offset", "lap opening", "lap opening coarse", "lap opening fine",
    ];

    /// <summary>The constant of a grit's class; −1 where the grit is not told: all share one value then.</summary>
    public static int GritClass(double? grit) => grit is not { } g ? -1 : g <= 100 ? LapCoarse : LapFine;
}
