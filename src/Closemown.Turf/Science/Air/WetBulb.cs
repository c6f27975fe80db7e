namespace Closemown.Turf;

/// <summary>Wet-bulb temperature at sea-level pressure, °C: what wet leaves cool down to in moving air.</summary>
/// <remarks>
/// Stull 2011, J. Appl. Meteorol. Climatol. 50:2267, eq. 1, an empirical fit for 101.325 kPa; 5 to 99 % and −20 to 50 °C (except where it is both cold and
/// dry, from memory), error −1 to 0.65 °C.
/// </remarks>
/// <example>20 °C at 50 %: 13.7 °C (the paper's own example, from memory).</example>
public static class WetBulb
{
    /// <summary>What the fit covers.</summary>
    public static PublishedRange TemperatureC { get; } = new("temperature", -20, 50, "°C");

    /// <summary>What the fit covers.</summary>
    public static PublishedRange HumidityPct { get; } = new("relative humidity", 5, 99, "%");

    /// <summary>Wet-bulb temperature, °C.</summary>
    /// <param name="tC">Air temperature, °C, −100 to 100; marked outside −20 to 50.</param>
    /// <param name="rhPct">Relative humidity, %, 0 to 100; marked outside 5 to 99.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static Ranged C(double tC, double rhPct)
    {
        Must.BeTemperature(tC);
        Must.BePercent(rhPct);
        var c = (tC * Math.Atan(0.151977 * Math.Sqrt(rhPct + 8.313659)))
            + Math.Atan(tC + rhPct)
            - Math.Atan(rhPct - 1.676331)
            + (0.00391838 * Math.Pow(rhPct, 1.5) * Math.Atan(0.023101 * rhPct))
            - 4.686035;
        return new Ranged(c, TemperatureC.MarkOf(tC)).Mark(HumidityPct.MarkOf(rhPct));
    }
}
