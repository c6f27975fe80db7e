namespace Closemown.Turf;

/// <summary>What of a nutrient to give so that the soil keeps to its guideline.</summary>
/// <remarks>
/// Need = use + guideline − soil test, all as amounts on the ground: Woods 2016. A level in mg/kg is an amount by depth and density of the soil: 1 mg/kg of a layer of 100 mm
/// at 1.5 kg/L is 0.15 g/m². Exact by definition.
/// </remarks>
public static class SoilNeed
{
    /// <summary>Density of soil that is counted with where none was told, kg/L: 2 million pounds an acre for 6 inches (Woods 2016), 1.471.</summary>
    public const double UsualKgPerL = 2e6 * PoundKg / (AcreM2 * 6 * InchMm);

    private const double PoundKg = 0.45359237, AcreM2 = 4046.8564224, InchMm = 25.4;
    private const double GPerMg = 1e-3;

    /// <summary>Amount on the ground of a level in the soil, g/m².</summary>
    /// <param name="mgKg">Level, mg/kg, 0 or more.</param>
    /// <param name="depthMm">Depth of the layer, mm, above 0; 100 is usual.</param>
    /// <param name="kgPerL">Density of the dry soil, kg/L, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static double Gm2(double mgKg, double depthMm, double kgPerL = UsualKgPerL)
    {
        Must.NotBeNegative(mgKg);
        Must.BePositive(depthMm);
        Must.BePositive(kgPerL);
        return mgKg * GPerMg * depthMm * kgPerL;
    }

    /// <summary>What to give, in the unit of the three; 0 where the soil has enough.</summary>
    /// <example>2 used, guideline 1, soil 1.2: 1.8.</example>
    /// <param name="use">What the turf will use.</param>
    /// <param name="guideline">What the soil should hold.</param>
    /// <param name="soil">What it holds.</param>
    /// <exception cref="ArgumentOutOfRangeException">One is below 0.</exception>
    public static double Of(double use, double guideline, double soil)
    {
        Must.NotBeNegative(use);
        Must.NotBeNegative(guideline);
        Must.NotBeNegative(soil);
        return Math.Max(0, use + guideline - soil);
    }
}
