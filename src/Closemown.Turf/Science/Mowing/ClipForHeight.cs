namespace Closemown.Turf;

/// <summary>The clip (travel per blade) that goes with a height of cut.</summary>
/// <remarks>
/// About the height of cut, or less (common practice, no source): 170 cuts per metre are wanted on a croquet lawn of 5 mm, a clip of 5.9, so a little more is borne
/// too. Too long a clip leaves waves across the cut.
/// </remarks>
public static class ClipForHeight
{
    /// <summary>How far above the height of cut the clip may lie, mm (common practice, no source).</summary>
    public const double GraceMm = 1;

    /// <summary>Clip of so many cuts in a metre, mm; exact by definition.</summary>
    /// <param name="cutsPerMetre">Cuts in a metre of travel, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not above 0.</exception>
    public static double OfCutsPerMetreMm(double cutsPerMetre)
    {
        Must.BePositive(cutsPerMetre);
        return 1000 / cutsPerMetre;
    }

    /// <summary>Whether a clip suits a height of cut.</summary>
    /// <param name="clipMm">Travel per blade, mm, above 0.</param>
    /// <param name="cutMm">Height of cut, mm, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not above 0.</exception>
    public static bool Suits(double clipMm, double cutMm)
    {
        Must.BePositive(clipMm);
        Must.BePositive(cutMm);
        return clipMm <= cutMm + GraceMm;
    }
}
