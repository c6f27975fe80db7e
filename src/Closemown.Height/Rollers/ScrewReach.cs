namespace Closemown.Height;

/// <summary>How far the height screws can still go from where they stand, turns; + raises.</summary>
/// <param name="LeftDown">Least of the left screw (not above 0).</param>
/// <param name="LeftUp">Most of the left screw (not below 0).</param>
/// <param name="RightDown">Least of the right screw.</param>
/// <param name="RightUp">Most of the right screw.</param>
public readonly record struct ScrewRange(double LeftDown, double LeftUp, double RightDown, double RightUp);

/// <summary>Whether a pair of heights can be reached, known before a screw is turned.</summary>
/// <param name="Turns">The turns it would take.</param>
/// <param name="LeftMissing">Turns the left screw is short of, signed like the turn; 0 where it reaches.</param>
/// <param name="RightMissing">The same of the right screw.</param>
/// <param name="Nearest">The heights with each screw stopped at its limit.</param>
public sealed record ScrewReach(ScrewTurns Turns, double LeftMissing, double RightMissing, BenchPair Nearest)
{
    /// <summary>Whether both screws reach.</summary>
    public bool Reaches => LeftMissing == 0 && RightMissing == 0;

    /// <summary>Weighs a wish against the range of the screws.</summary>
    /// <example>Rollers of 60 mm, edge midway, 1.25 mm a turn, both at 4 mm with two turns of play upwards: 6 mm would take about 3.2 turns a side, so
    /// each is 1.2 short, and about 5.25 mm is the most.</example>
    /// <exception cref="ArgumentException">As for <see cref="BenchFromScrews.Turns"/>.</exception>
    public static ScrewReach Of(RollerGeometry geometry, BenchPair now, BenchPair wanted, ScrewRange range)
    {
        var at = BenchFromScrews.Turns(geometry, now);
        var turns = BenchFromScrews.TurnsBetween(geometry, now, wanted);
        var left = Math.Clamp(turns.Left, Math.Min(0, range.LeftDown), Math.Max(0, range.LeftUp));
        var right = Math.Clamp(turns.Right, Math.Min(0, range.RightDown), Math.Max(0, range.RightUp));
        return new(turns, turns.Left - left, turns.Right - right, BenchFromScrews.Heights(geometry, new(at.Left + left, at.Right + right)));
    }

    /// <summary>The lowest and the highest heights that both screws reach together from here, mm.</summary>
    public static (BenchPair Lowest, BenchPair Highest) Limits(RollerGeometry geometry, BenchPair now, ScrewRange range)
    {
        var at = BenchFromScrews.Turns(geometry, now);
        return (BenchFromScrews.Heights(geometry, new(at.Left + range.LeftDown, at.Right + range.RightDown)),
            BenchFromScrews.Heights(geometry, new(at.Left + range.LeftUp, at.Right + range.RightUp)));
    }
}
