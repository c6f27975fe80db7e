namespace Closemown.Turf;

/// <summary>Dew point, °C: a surface colder than this gets wet.</summary>
/// <remarks>
/// From temperature and humidity by the Magnus form with 17.625 and 243.04 °C, range −40 to 50 °C: Alduchov &amp; Eskridge 1996, J. Appl. Meteorol. 35:601,
/// eq. 21 (constants, range and equation number from memory). From vapour pressure by FAO-56 annex 3 (from memory): it inverts eq. 11 with rounded constants.
/// </remarks>
/// <example>25 °C at 60 %: 16.7 °C.</example>
public static class DewPoint
{
    private const double Slope = 17.625, OffsetC = 243.04;

    /// <summary>What the fit covers.</summary>
    public static PublishedRange TemperatureC { get; } = new("temperature", -40, 50, "°C");

    /// <summary>From temperature and humidity, °C: g = ln(RH/100) + 17.625·T/(243.04 + T), dew point = 243.04·g/(17.625 − g).</summary>
    /// <param name="tC">Air temperature, °C, −100 to 100; marked outside −40 to 50.</param>
    /// <param name="rhPct">Relative humidity, %, above 0, to 100: dry air has no dew point.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static Ranged C(double tC, double rhPct)
    {
        Must.BeTemperature(tC);
        Must.BePositive(rhPct);
        Must.BePercent(rhPct);
        var g = Math.Log(rhPct / 100) + (Slope * tC / (OffsetC + tC));
        return new(OffsetC * g / (Slope - g), TemperatureC.MarkOf(tC));
    }

    /// <summary>From vapour pressure, °C: (116.91 + 237.3·ln ea)/(16.78 − ln ea).</summary>
    /// <param name="vapourKpa">Vapour pressure, kPa, above 0, at most that of saturated air at 100 °C.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static double FromVapourPressureC(double vapourKpa)
    {
        Must.BePositive(vapourKpa);
        Must.Lie(vapourKpa, 0, SaturationVapourPressure.Kpa(100));
        var ln = Math.Log(vapourKpa);
        return (116.91 + (Fao56.CurveOffsetC * ln)) / (16.78 - ln);
    }
}
