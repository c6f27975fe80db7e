namespace Closemown.Turf;

/// <summary>Heat that goes into the soil, G, MJ/m² a day.</summary>
/// <remarks>
/// Over a day or ten it is taken as 0 (FAO-56 eq. 42); over months it counts. Source: Allen, Pereira, Raes &amp; Smith 1998, FAO Irrigation and Drainage Paper 56.
/// </remarks>
public static class SoilHeatFlux
{
    /// <summary>Of a day, MJ/m² (eq. 42).</summary>
    public const double DayMjM2 = 0;

    /// <summary>Of a month, from its own mean temperature and that of the month before (eq. 44): G = 0.14·(Ti − Ti−1), MJ/m² a day.</summary>
    /// <example>30.2 °C after 29.2 °C: 0.14 (FAO-56 example 17).</example>
    /// <param name="meanC">Mean temperature of the month, °C, −100 to 100.</param>
    /// <param name="beforeC">Of the month before, °C, −100 to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static double MonthMjM2(double meanC, double beforeC)
    {
        Must.BeTemperature(meanC);
        Must.BeTemperature(beforeC);
        return 0.14 * (meanC - beforeC);
    }
}
