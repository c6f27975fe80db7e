namespace Closemown.Height;

/// <summary>How much one side stands higher than the other, and how the bedknife leans to the ground.</summary>
public static class Tilt
{
    /// <summary>Right less left, mm over a metre of width.</summary>
    /// <example>5.00 mm left and 5.10 right, read 460 mm apart: 0.1/0.46 = 0.217 mm a metre.</example>
    /// <exception cref="ArgumentException">The places are not left and right of each other.</exception>
    public static double MmPerMetre(BenchPair heights, (double Left, double Right) readAtMm) => readAtMm.Right > readAtMm.Left
        ? 1000 * (heights.RightMm - heights.LeftMm) / (readAtMm.Right - readAtMm.Left)
        : throw new ArgumentException($"The places read must lie left and right of each other, but are at {Text.N(readAtMm.Left)} and {Text.N(readAtMm.Right)} mm.", nameof(readAtMm));

    /// <summary>How much the bedknife's angle to the ground changes from one bench height to another, degrees; + is nose up.</summary>
    /// <remarks>Raising the edge by lowering the front roller turns the whole unit: the knife no longer meets the leaf at the angle it was ground for.</remarks>
    /// <example>Rollers of 60 mm 200 apart, edge midway: from 4 to 6 mm the front axis goes about 4 mm down, atan(4/200) = 1.15°.</example>
    /// <exception cref="ArgumentException">As for <see cref="BenchFromScrews.Turns"/>.</exception>
    public static double AttitudeChangeDeg(RollerGeometry geometry, double fromMm, double toMm)
    {
        ArgumentNullException.ThrowIfNull(geometry);
        return Lean(toMm) - Lean(fromMm);

        double Lean(double heightMm)
        {
            var drop = geometry.BracketMmPerTurn * BenchFromScrews.Turns(geometry, new(heightMm, heightMm)).Left;
            return RollerPlane.LeanDeg(geometry.Front(drop), geometry.Rear(drop));
        }
    }
}
