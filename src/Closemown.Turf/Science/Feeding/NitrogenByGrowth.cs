namespace Closemown.Turf;

/// <summary>Nitrogen that a month's warmth lets turf use, g/m².</summary>
/// <remarks>
/// Monthly maximum · growth potential of the month's mean: Gelernter &amp; Stowell 2005, Golf Course Management 73(3):108; Woods 2013. The maximum is the person's own choice;
/// 3 to 4 g/m² are told of bentgrass greens (from memory). Advice, no dose: the label and the law decide. No range is published.
/// </remarks>
/// <example>3.5 g/m² at 12 °C, cool-season: 1.22 g/m².</example>
public static class NitrogenByGrowth
{
    /// <summary>Nitrogen for the month, g/m².</summary>
    /// <param name="maximumGm2">What it would use at its best, g/m² a month, 0 or more.</param>
    /// <param name="meanC">Mean temperature of the month, °C, −100 to 100.</param>
    /// <param name="grass">Kind of grass.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static double MonthGm2(double maximumGm2, double meanC, TurfGrass grass)
    {
        Must.NotBeNegative(maximumGm2);
        return maximumGm2 * GrowthPotential.Of(meanC, grass);
    }
}
