namespace Closemown.Height;

/// <summary>The plane under both rollers, which is what the unit stands on: the lower common tangent of two circles.</summary>
/// <remarks>
/// With centres f and r, radii R_f and R_r and the distance d between the axes, the tangent leans by
/// α = atan2(y_r − y_f, x_r − x_f) − asin((R_r − R_f)/d), and a point p stands n·(p − f) + R_f above it, n = (−sin α, cos α).
/// Source: plane geometry (external common tangent of two circles).
/// </remarks>
public static class RollerPlane
{
    /// <summary>Height of a point above the plane under both rollers, mm; below it negative.</summary>
    /// <example>Two rollers of radius 30 with their axes level and 26 above the edge: 30 − 26 = 4 mm.</example>
    /// <param name="front">The front roller.</param>
    /// <param name="rear">The rear roller.</param>
    /// <param name="xMm">The point, rearward +.</param>
    /// <param name="yMm">The point, upward +.</param>
    /// <exception cref="ArgumentException">A radius is not positive, a number is not finite, or one roller lies within the other so that nothing touches both.</exception>
    public static double HeightMm(Roller front, Roller rear, double xMm, double yMm)
    {
        var lean = LeanRad(front, rear);
        return (-Math.Sin(lean) * (xMm - front.XMm)) + (Math.Cos(lean) * (yMm - front.YMm)) + front.RadiusMm;
    }

    /// <summary>How far the plane leans against the unit's own frame, degrees; + where it rises rearward.</summary>
    /// <remarks>The bedknife's angle to the ground is its angle in the unit's frame less this.</remarks>
    /// <example>Radii 30 and 40, axes level and 200 apart: −asin(10/200) = −2.866°: the smaller front roller sinks the nose.</example>
    /// <exception cref="ArgumentException">As for <see cref="HeightMm"/>.</exception>
    public static double LeanDeg(Roller front, Roller rear) => LeanRad(front, rear) * 180 / Math.PI;

    /// <summary>Where a roller's axis must stand (its y) for the edge to be at a height, mm, its x and radius and the other roller being held.</summary>
    /// <remarks>The line lies <paramref name="heightMm"/> below the edge and touches the other roller, so it is the common tangent of that roller and a
    /// circle of that radius about the edge; the moved roller's axis then stands its own radius above the line.</remarks>
    /// <example>Rollers of radius 30 at x = −100 and 90, the edge at (0, 0), 4 mm asked: with the rear axis at y = 26 the front axis goes to 26.</example>
    /// <param name="moved">The roller that moves; its y does not matter.</param>
    /// <param name="other">The roller that stays.</param>
    /// <param name="xMm">The edge, rearward +; between the rollers.</param>
    /// <param name="yMm">The edge, upward +.</param>
    /// <param name="heightMm">The height asked for, more than 0.</param>
    /// <exception cref="ArgumentException">As for <see cref="HeightMm"/>; the height is not positive; the edge does not lie between the axes.</exception>
    public static double AxisForHeightMm(Roller moved, Roller other, double xMm, double yMm, double heightMm)
    {
        if (!(heightMm > 0)) throw new ArgumentException($"A bench height is more than 0 mm, but {Text.N(heightMm)} was asked for.", nameof(heightMm));
        if ((xMm - moved.XMm) * (other.XMm - xMm) <= 0)
            throw new ArgumentException($"The edge must lie between the axes ({Text.N(moved.XMm)} and {Text.N(other.XMm)} mm), but is at {Text.N(xMm)}: measure it from the front axis again.", nameof(xMm));
        var edge = new Roller(xMm, yMm, heightMm);
        var lean = other.XMm > xMm ? LeanRad(edge, other) : LeanRad(other, edge);
        return yMm + ((moved.RadiusMm - heightMm + (Math.Sin(lean) * (moved.XMm - xMm))) / Math.Cos(lean));
    }

    private static double LeanRad(Roller front, Roller rear)
    {
        double dx = rear.XMm - front.XMm, dy = rear.YMm - front.YMm, d = Math.Sqrt((dx * dx) + (dy * dy)), dr = rear.RadiusMm - front.RadiusMm;
        if (!(front.RadiusMm > 0 && rear.RadiusMm > 0)) throw new ArgumentException($"A roller's radius is more than 0 mm, but they are {Text.N(front.RadiusMm)} and {Text.N(rear.RadiusMm)}.");
        if (!(dx > 0 && double.IsFinite(d))) throw new ArgumentException($"The rear axis must lie behind the front one, but is {Text.N(dx)} mm behind it.");
        if (!(Math.Abs(dr) < d)) throw new ArgumentException($"Nothing touches both rollers: their radii differ by {Text.N(dr)} mm over {Text.N(d)} mm between the axes. Measure span and diameters again.");
        return Math.Atan2(dy, dx) - Math.Asin(dr / d);
    }
}
