namespace Closemown.Turf;

/// <summary>What irrigation water brings of a nutrient, g/m².</summary>
/// <remarks>mm · mg/L / 1000, as 1 mm is 1 L/m²: Woods 2020; exact by definition.</remarks>
/// <example>240 mm at 10 mg/L: 2.4 g/m².</example>
public static class IrrigationNutrient
{
    /// <summary>The amount, g/m².</summary>
    /// <param name="waterMm">Water given, mm, 0 or more.</param>
    /// <param name="mgPerL">What it holds, mg/L, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static double Gm2(double waterMm, double mgPerL)
    {
        Must.NotBeNegative(waterMm);
        Must.NotBeNegative(mgPerL);
        return waterMm * mgPerL / 1000;
    }
}
