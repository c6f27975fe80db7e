namespace Closemown.Turf;

/// <summary>Growth in height of close-mown turf, mm a day: a starting value until the place's own record teaches better.</summary>
/// <remarks>
/// full · growth potential · what the water allows · what a regulator leaves. That these multiply is an assumption. The full rates and the factor of a regulator are common
/// practice, no source; a factor of <see cref="SpreadFactor"/> either way is their spread (one standard deviation of the logarithm). No range is published.
/// </remarks>
/// <example>Creeping bent at potential 0.66, water enough: 0.6 mm a day.</example>
public static class LeafGrowth
{
    /// <summary>At its best: fescues and browntop, mm a day (common practice, no source).</summary>
    public const double FescueBrowntopMm = 0.6;

    /// <summary>At its best: creeping bent and annual meadow-grass, mm a day (common practice, no source).</summary>
    public const double CreepingBentMm = 0.9;

    /// <summary>At its best: ryegrass, mm a day (common practice, no source).</summary>
    public const double RyegrassMm = 1.2;

    /// <summary>At its best: a grass that was not told, mm a day (common practice, no source).</summary>
    public const double UntoldMm = 1.0;

    /// <summary>How far a place's full rate may lie from these, as a factor either way (assumption).</summary>
    public const double SpreadFactor = 1.6;

    /// <summary>How far one day's growth may lie from what is expected, as a factor either way (assumption).</summary>
    public const double DayFactor = 1.25;

    /// <summary>What a growth regulator leaves (20 to 30 % less clippings: Kreuser &amp; Soldat 2011).</summary>
    public const double RegulatedShare = 0.75;

    /// <summary>Growth expected, mm a day.</summary>
    /// <param name="fullMm">Growth at its best, mm a day, 0 or more.</param>
    /// <param name="potential">Growth potential of the day, 0 to 1: <see cref="GrowthPotential"/>.</param>
    /// <param name="water">What the soil's water allows, 0 to 1: <see cref="SoilWaterGrowth"/>.</param>
    /// <param name="regulated">Whether a growth regulator is at work.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static double MmPerDay(double fullMm, double potential, double water = 1, bool regulated = false)
    {
        Must.NotBeNegative(fullMm);
        Must.Lie(potential, 0, 1);
        Must.Lie(water, 0, 1);
        return fullMm * potential * water * (regulated ? RegulatedShare : 1);
    }
}
