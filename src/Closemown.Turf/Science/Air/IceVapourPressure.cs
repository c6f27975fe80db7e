namespace Closemown.Turf;

/// <summary>Vapour pressure of saturated air over ice, and the temperature at which rime forms.</summary>
/// <remarks>
/// ei(T) = 0.61121·exp(22.587·T/(T + 273.86)) kPa, Magnus form, range −80 to 0 °C: Alduchov &amp; Eskridge 1996, J. Appl. Meteorol. 35:601, eq. 23
/// (constants, range and equation number from memory; a reference table at −20 °C agrees within 0.3 %).
/// </remarks>
/// <example>−20 °C: 0.1031 kPa, against 0.1246 over supercooled water.</example>
public static class IceVapourPressure
{
    private const double ScaleKpa = 0.61121, Slope = 22.587, OffsetC = 273.86;

    /// <summary>What the fit covers.</summary>
    public static PublishedRange TemperatureC { get; } = new("temperature", -80, 0, "°C");

    /// <summary>Saturation pressure over ice, kPa.</summary>
    /// <param name="tC">Temperature, °C, −100 to 100; marked outside −80 to 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such temperature.</exception>
    public static Ranged Kpa(double tC)
    {
        Must.BeTemperature(tC);
        return new(ScaleKpa * Math.Exp(Slope * tC / (tC + OffsetC)), TemperatureC.MarkOf(tC));
    }

    /// <summary>Frost point, °C: a surface colder than this takes rime. The fit solved for T.</summary>
    /// <param name="vapourKpa">Vapour pressure of the air, kPa, above 0; marked where the frost point lies outside −80 to 0 °C (above 0 it is dew).</param>
    /// <exception cref="ArgumentOutOfRangeException">Not above 0, or more than saturated air at 100 °C holds.</exception>
    public static Ranged FrostPointC(double vapourKpa)
    {
        Must.BePositive(vapourKpa);
        Must.Lie(vapourKpa, 0, SaturationVapourPressure.Kpa(100));
        var ln = Math.Log(vapourKpa / ScaleKpa);
        var c = OffsetC * ln / (Slope - ln);
        return new(c, TemperatureC.MarkOf(c));
    }
}
