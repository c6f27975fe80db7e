namespace Closemown.Turf;

/// <summary>Vapour pressure of saturated air over water, kPa.</summary>
/// <remarks>
/// FAO-56 eq. 11: e°(T) = 0.6108·exp(17.27·T/(T + 237.3)). The paper gives no range for it; its table runs from 1 to 48.5 °C (from memory). Below 0 °C the
/// curve is that of supercooled water: at −20 °C it lies 21 % above ice, so frost is judged with <see cref="IceVapourPressure"/>.
/// Source: Allen, Pereira, Raes &amp; Smith 1998, FAO Irrigation and Drainage Paper 56.
/// </remarks>
/// <example>24.5 °C: 3.075 kPa; 15 °C: 1.705 kPa (FAO-56 example 3).</example>
public static class SaturationVapourPressure
{
    private const double SlopeFactor = 4098;

    /// <summary>e°(T), kPa (eq. 11).</summary>
    /// <param name="tC">Air temperature, °C, −100 to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such temperature.</exception>
    public static double Kpa(double tC)
    {
        Must.BeTemperature(tC);
        return Fao56.CurveKpa * Math.Exp(Fao56.CurveSlope * tC / (tC + Fao56.CurveOffsetC));
    }

    /// <summary>Mean of a day, es, kPa (eq. 12): of the pressures at both ends, never the pressure of the mean, which is lower as the curve bends upward.</summary>
    /// <param name="tMinC">The day's lowest temperature, °C, −100 to 100.</param>
    /// <param name="tMaxC">Its highest, °C, not below the lowest.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such day.</exception>
    public static double MeanKpa(double tMinC, double tMaxC)
    {
        Must.BeDay(tMinC, tMaxC);
        return (Kpa(tMinC) + Kpa(tMaxC)) / 2;
    }

    /// <summary>Slope of the curve, Δ, kPa/°C (eq. 13): 4098·e°(T)/(T + 237.3)².</summary>
    /// <param name="tC">Air temperature, °C, −100 to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such temperature.</exception>
    public static double SlopeKpaPerC(double tC)
    {
        var over = tC + Fao56.CurveOffsetC;
        return SlopeFactor * Kpa(tC) / (over * over);
    }
}
