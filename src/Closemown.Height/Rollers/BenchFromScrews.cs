namespace Closemown.Height;

/// <summary>Bench height left and right, mm.</summary>
public readonly record struct BenchPair(double LeftMm, double RightMm);

/// <summary>Turns of the height screws, + raises.</summary>
public readonly record struct ScrewTurns(double Left, double Right);

/// <summary>Bench height from the screws and back, by geometry alone.</summary>
/// <remarks>
/// A bracket n turns up presses its end of the roller n·t down against the unit. The roller is stiff, so at a place x across the width it stands lower by
/// the straight line through both brackets; there the edge stands as high as <see cref="RollerPlane"/> says. So each screw moves both readings:
/// where the gauge reads inside the brackets the other side follows by (b − s)/(b + s) of this side's own move (brackets at ± b, readings at ± s).
/// Rollers are taken as round and stiff, and a slant across the width as small: a millimetre over half a metre changes a height by less than 0.001 mm.
/// </remarks>
public static class BenchFromScrews
{
    /// <summary>Bench heights after turns from the zero of the geometry.</summary>
    /// <example>Rollers of 60 mm, span 200, edge at (100, −26) midway, 1.25 mm a turn, brackets at ± 280, read at ± 230. Level it stands 30 − 26 = 4 mm.
    /// One turn left lowers the front axis 1.25·510/560 = 1.138 mm at the left reading and 1.25·50/560 = 0.112 at the right; midway half of it
    /// arrives: 4.570 and 4.056 mm (a touch more than half, as the unit leans).</example>
    /// <exception cref="ArgumentException">The rollers cannot stand on one plane, or brackets do not lie left and right.</exception>
    public static BenchPair Heights(RollerGeometry geometry, ScrewTurns turns)
    {
        ArgumentNullException.ThrowIfNull(geometry);
        return new(At(geometry, turns, geometry.ReadAtMm.Left), At(geometry, turns, geometry.ReadAtMm.Right));
    }

    /// <summary>Turns from the zero of the geometry that give both heights: the two coupled equations solved together.</summary>
    /// <exception cref="ArgumentException">As for <see cref="Heights"/>; a height is not positive; the edge does not lie between the axes; both sides are read at one place.</exception>
    public static ScrewTurns Turns(RollerGeometry geometry, BenchPair wanted)
    {
        ArgumentNullException.ThrowIfNull(geometry);
        var g = geometry;
        double left = Drop(g, wanted.LeftMm), right = Drop(g, wanted.RightMm);
        var slope = (right - left) / Width(g.ReadAtMm, "The places where the height is read");
        Width(g.BracketAtMm, "The brackets");
        double At(double x) => (left + (slope * (x - g.ReadAtMm.Left))) / g.BracketMmPerTurn;
        return new(At(g.BracketAtMm.Left), At(g.BracketAtMm.Right));
    }

    /// <summary>Turns from one pair of heights to another, as the gauge shows them.</summary>
    /// <exception cref="ArgumentException">As for <see cref="Turns"/>.</exception>
    public static ScrewTurns TurnsBetween(RollerGeometry geometry, BenchPair now, BenchPair wanted)
    {
        var (from, to) = (Turns(geometry, now), Turns(geometry, wanted));
        return new(to.Left - from.Left, to.Right - from.Right);
    }

    /// <summary>What a turn at each screw does to each reading, mm per turn, near a setting: the slopes of <see cref="Heights"/>.</summary>
    /// <returns>Left reading by left screw, left by right, right by left, right by right.</returns>
    public static (double LeftByLeft, double LeftByRight, double RightByLeft, double RightByRight) Slopes(RollerGeometry geometry, ScrewTurns at)
    {
        const double Step = 1e-4;                        // turns; the curve is so flat that the difference is good to 1e-7 mm per turn
        var left = Difference(new(Step, 0));
        var right = Difference(new(0, Step));
        return (left.LeftMm, right.LeftMm, left.RightMm, right.RightMm);

        BenchPair Difference(ScrewTurns d)
        {
            var up = Heights(geometry, new(at.Left + d.Left, at.Right + d.Right));
            var down = Heights(geometry, new(at.Left - d.Left, at.Right - d.Right));
            return new((up.LeftMm - down.LeftMm) / (2 * Step), (up.RightMm - down.RightMm) / (2 * Step));
        }
    }

    private static double At(RollerGeometry g, ScrewTurns turns, double xMm)
    {
        var share = (xMm - g.BracketAtMm.Left) / Width(g.BracketAtMm, "The brackets");
        var drop = g.BracketMmPerTurn * (turns.Left + (share * (turns.Right - turns.Left)));
        return RollerPlane.HeightMm(g.Front(drop), g.Rear(drop), g.EdgeXMm, g.EdgeYMm);
    }

    private static double Drop(RollerGeometry g, double heightMm) => g.Screws == ScrewedRoller.Front
        ? -RollerPlane.AxisForHeightMm(g.Front(0), g.Rear(0), g.EdgeXMm, g.EdgeYMm, heightMm)
        : -RollerPlane.AxisForHeightMm(g.Rear(0), g.Front(0), g.EdgeXMm, g.EdgeYMm, heightMm);

    private static double Width((double Left, double Right) at, string what) => at.Right > at.Left ? at.Right - at.Left
        : throw new ArgumentException($"{what} must lie left and right of each other, but are at {Text.N(at.Left)} and {Text.N(at.Right)} mm.");
}
