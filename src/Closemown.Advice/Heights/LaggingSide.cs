using Closemown.Entries;
using Closemown.Height;

namespace Closemown.Advice;

/// <summary>A side that did not follow its screw, in words.</summary>
internal static class LaggingSide
{
    /// <summary>What to look at (common practice, no source).</summary>
    public static readonly string[] Look = ["lock nut", "thread", "bracket", "pin"];

    /// <summary>What to do before it is turned again.</summary>
    public static string First(SideLags lags) => $"First look at the {Name(lags)} side: {Looked}. It made less than half of what it was turned, twice.";

    /// <summary>What was seen, and what it means.</summary>
    public static string Say(SideLags lags, HeightUnit unit)
    {
        var (a, b) = (lags.Moves[0], lags.Moves[1]);
        var finer = unit.ToldMmPerTurn is null ? " (Should its thread be finer than usual, describe the unit with its screwMmPerTurn.)" : "";
        return $"The {Name(lags)} side does not follow its screw: turned by {Mm(a.TurnedMm)} and then {Mm(b.TurnedMm)}, it made {Made(a)} and {Made(b)}. That is a fault, not chance: look at its {Looked}.{finer}";
    }

    private static string Looked => string.Join(", ", Look[..^1]) + " and " + Look[^1];

    /// <summary>The side.</summary>
    public static string Name(SideLags lags) => lags.Side == 0 ? Stations.Left : Stations.Right;

    private static string Made((double TurnedMm, double MadeMm) move) => move.MadeMm * move.TurnedMm < 0 ? $"{Mm(move.MadeMm)} the other way" : Mm(move.MadeMm);

    private static string Mm(double mm) => HeightSpeech.Mm(Math.Abs(mm));
}
