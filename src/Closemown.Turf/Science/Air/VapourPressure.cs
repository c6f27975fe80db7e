namespace Closemown.Turf;

/// <summary>Vapour pressure that the air really holds, ea, kPa: by the best humidity reading there is.</summary>
/// <remarks>
/// In the order FAO-56 prefers them: dew point, wet bulb, both humidities of the day, the highest one, the mean one, none. The mean one is the least good: 5 %
/// above eq. 17 in the paper's example. Source: Allen, Pereira, Raes &amp; Smith 1998, FAO Irrigation and Drainage Paper 56; no ranges are given there.
/// </remarks>
public static class VapourPressure
{
    /// <summary>From the dew point (eq. 14): ea = e°(Tdew), kPa.</summary>
    /// <param name="dewC">Mean dew point, °C, −100 to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such temperature.</exception>
    public static double FromDewPointKpa(double dewC) => SaturationVapourPressure.Kpa(dewC);

    /// <summary>From dry and wet bulb (eq. 15): ea = e°(Twet) − 0.000665·P·(Tdry − Twet), kPa. For an aspirated psychrometer, about 5 m/s (eq. 16).</summary>
    /// <param name="dryC">Dry bulb, °C, −100 to 100.</param>
    /// <param name="wetC">Wet bulb, °C, not above the dry one, and not so far below it that ea would be negative.</param>
    /// <param name="pressureKpa">Air pressure, kPa, above 0; 101.3 at sea level.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static double FromWetBulbKpa(double dryC, double wetC, double pressureKpa)
    {
        Must.BeTemperature(dryC);
        Must.BeTemperature(wetC);
        if (wetC > dryC) throw new ArgumentOutOfRangeException(nameof(wetC), wetC, $"The wet bulb is not warmer than the dry one, {Text.N(dryC)}.");
        var ea = SaturationVapourPressure.Kpa(wetC) - (AirPressure.PsychrometricKpaPerC(pressureKpa) * (dryC - wetC));
        return ea >= 0 ? ea : throw new ArgumentOutOfRangeException(nameof(wetC), wetC, "The wet bulb lies below that of wholly dry air.");
    }

    /// <summary>From both humidities of the day (eq. 17), kPa: the highest goes with the lowest temperature.</summary>
    /// <example>18 °C, 82 %; 25 °C, 54 %: 1.70 kPa (FAO-56 example 5).</example>
    /// <param name="tMinC">Lowest temperature, °C, −100 to 100.</param>
    /// <param name="tMaxC">Highest temperature, °C, not below the lowest.</param>
    /// <param name="rhMinPct">Lowest relative humidity, %, 0 to 100.</param>
    /// <param name="rhMaxPct">Highest, %, not below the lowest.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static double FromHumiditiesKpa(double tMinC, double tMaxC, double rhMinPct, double rhMaxPct)
    {
        Must.BeDay(tMinC, tMaxC);
        Must.BePercent(rhMinPct);
        Must.BePercent(rhMaxPct);
        if (rhMaxPct < rhMinPct) throw new ArgumentOutOfRangeException(nameof(rhMaxPct), rhMaxPct, $"The highest humidity is not below the lowest, {Text.N(rhMinPct)}.");
        return ((SaturationVapourPressure.Kpa(tMinC) * rhMaxPct) + (SaturationVapourPressure.Kpa(tMaxC) * rhMinPct)) / 200;
    }

    /// <summary>From the highest humidity alone (eq. 18): ea = e°(Tmin)·RHmax/100, kPa. For instruments that read low humidities badly.</summary>
    /// <param name="tMinC">Lowest temperature, °C, −100 to 100.</param>
    /// <param name="rhMaxPct">Highest relative humidity, %, 0 to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static double FromHighestHumidityKpa(double tMinC, double rhMaxPct)
    {
        Must.BePercent(rhMaxPct);
        return SaturationVapourPressure.Kpa(tMinC) * rhMaxPct / 100;
    }

    /// <summary>From the mean humidity (eq. 19): ea = RHmean/100·(e°(Tmax) + e°(Tmin))/2, kPa.</summary>
    /// <param name="tMinC">Lowest temperature, °C, −100 to 100.</param>
    /// <param name="tMaxC">Highest temperature, °C, not below the lowest.</param>
    /// <param name="rhMeanPct">Mean relative humidity, %, 0 to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static double FromMeanHumidityKpa(double tMinC, double tMaxC, double rhMeanPct)
    {
        Must.BePercent(rhMeanPct);
        return SaturationVapourPressure.MeanKpa(tMinC, tMaxC) * rhMeanPct / 100;
    }

    /// <summary>With no humidity read (eq. 48): the air is taken to be saturated at the day's lowest temperature, kPa. Too moist where it is dry or at a town's station.</summary>
    /// <param name="tMinC">Lowest temperature, °C, −100 to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such temperature.</exception>
    public static double FromLowestTemperatureKpa(double tMinC) => SaturationVapourPressure.Kpa(tMinC);
}
