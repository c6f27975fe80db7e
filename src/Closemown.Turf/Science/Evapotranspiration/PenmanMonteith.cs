namespace Closemown.Turf;

/// <summary>The equation itself: water that a wide, well-watered grass of 0.12 m gives off, mm a day.</summary>
/// <remarks>
/// FAO-56 eq. 6: ETo = (0.408·Δ·(Rn − G) + γ·900/(T + 273)·u2·(es − ea))/(Δ + γ·(1 + 0.34·u2)). The other steps are put together in
/// <see cref="ReferenceEvapotranspiration"/>. Source: Allen, Pereira, Raes &amp; Smith 1998, FAO Irrigation and Drainage Paper 56.
/// </remarks>
public static class PenmanMonteith
{
    private const double AirNumerator = 900, SurfaceDenominator = 0.34, ZeroCKelvin = 273;

    /// <summary>ETo, mm a day; negative where more vapour settles than leaves.</summary>
    /// <param name="meanC">Mean temperature T, °C, −100 to 100.</param>
    /// <param name="netMjM2">Net radiation Rn, MJ/m² a day, −60 to 60.</param>
    /// <param name="soilMjM2">Heat into the soil G, MJ/m² a day, −60 to 60.</param>
    /// <param name="windMs">Wind at 2 m, m/s, 0 or more.</param>
    /// <param name="deficitKpa">Vapour pressure deficit es − ea, kPa, −101 to 101.</param>
    /// <param name="psychrometricKpaPerC">γ, kPa/°C, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static double Mm(double meanC, double netMjM2, double soilMjM2, double windMs, double deficitKpa, double psychrometricKpaPerC)
    {
        Must.Lie(netMjM2, -60, 60);
        Must.Lie(soilMjM2, -60, 60);
        Must.NotBeNegative(windMs);
        Must.Lie(deficitKpa, -101, 101);
        Must.BePositive(psychrometricKpaPerC);
        var slope = SaturationVapourPressure.SlopeKpaPerC(meanC);
        var radiation = Fao56.MmPerMj * slope * (netMjM2 - soilMjM2);
        var air = psychrometricKpaPerC * AirNumerator / (meanC + ZeroCKelvin) * windMs * deficitKpa;
        return (radiation + air) / (slope + (psychrometricKpaPerC * (1 + (SurfaceDenominator * windMs))));
    }
}
