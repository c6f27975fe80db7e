namespace Closemown.Height;

/// <summary>What a roller that is not as it was does to the bench height, mm; + is higher.</summary>
public static class RollerShift
{
    /// <summary>Change of bench height when the rollers' diameters change, the screws being left alone.</summary>
    /// <remarks>Worn: negative changes. A layer of tape of thickness t all round: +2t on the diameter.</remarks>
    /// <example>Rollers of 60 mm, edge midway. Front worn by 1 mm of diameter: its radius is 0.5 less, half of that arrives midway: −0.25 mm. A tape of
    /// 0.15 mm on the front roller: +0.3 mm of diameter, +0.075 mm.</example>
    /// <param name="geometry">The unit; heights at zero turns.</param>
    /// <param name="frontChangeMm">Change of the front roller's diameter, mm.</param>
    /// <param name="rearChangeMm">Change of the rear roller's diameter, mm.</param>
    /// <exception cref="ArgumentException">Nothing is left of a roller, or the rollers cannot stand on one plane.</exception>
    public static double HeightChangeMm(RollerGeometry geometry, double frontChangeMm, double rearChangeMm)
    {
        ArgumentNullException.ThrowIfNull(geometry);
        var after = geometry with { FrontMm = geometry.FrontMm + frontChangeMm, RearMm = geometry.RearMm + rearChangeMm };
        return BenchFromScrews.Heights(after, default).LeftMm - BenchFromScrews.Heights(geometry, default).LeftMm;
    }

    /// <summary>How much lower a unit rides on turf with a grooved front roller than on the bench, where the gauge lies on the lands, mm (not above 0).</summary>
    /// <remarks>The turf fills the grooves by some share; the lands then stand in it by that share of the groove's depth. How far it fills is an assumption, no
    /// source: it is what sink learns.</remarks>
    /// <example>Grooves 3 mm deep, filled by a tenth, rollers of 60 mm, edge midway: the front drops 0.3 mm, the edge 0.15.</example>
    /// <param name="geometry">The unit; the front diameter is that over the lands.</param>
    /// <param name="grooveDepthMm">Depth of the grooves, mm; not negative, less than the radius.</param>
    /// <param name="filled">Share of the depth that the turf fills, 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The depth is negative or beyond the radius; the share lies outside 0 to 1.</exception>
    public static double GroovedRideMm(RollerGeometry geometry, double grooveDepthMm, double filled)
    {
        ArgumentNullException.ThrowIfNull(geometry);
        if (!(grooveDepthMm >= 0 && grooveDepthMm < geometry.FrontMm / 2))
            throw new ArgumentOutOfRangeException(nameof(grooveDepthMm), grooveDepthMm, $"A groove is 0 to {Text.N(geometry.FrontMm / 2)} mm deep here.");
        if (!(filled >= 0 && filled <= 1)) throw new ArgumentOutOfRangeException(nameof(filled), filled, "A share lies within 0 and 1.");
        return HeightChangeMm(geometry, -2 * filled * grooveDepthMm, 0);
    }
}
