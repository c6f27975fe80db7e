namespace Closemown.Turf;

/// <summary>What of the radiation stays with the turf, MJ/m² a day.</summary>
/// <remarks>
/// FAO-56 eq. 38 to 40. Rs/Rso is kept at 1 at most, as the paper asks, and at 0.3 at least, as the ASCE standard of 2005 does (from memory): measured radiation
/// under thick cloud would else turn the sign. Source: Allen, Pereira, Raes &amp; Smith 1998, FAO Irrigation and Drainage Paper 56.
/// </remarks>
public static class NetRadiation
{
    private const double Albedo = 0.23, StefanBoltzmann = 4.903e-9, ZeroCKelvin = 273.16, LeastClearness = 0.3;

    /// <summary>Net short wave (eq. 38): Rns = (1 − 0.23)·Rs, MJ/m² a day; 0.23 is the albedo of the reference grass.</summary>
    /// <param name="solarMjM2">Rs, MJ/m² a day, 0 to 60.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static double ShortWaveMjM2(double solarMjM2)
    {
        Must.Lie(solarMjM2, 0, 60);
        return (1 - Albedo) * solarMjM2;
    }

    /// <summary>Net long wave, outgoing (eq. 39), MJ/m² a day: σ·(Tmax⁴ + Tmin⁴)/2·(0.34 − 0.14·√ea)·(1.35·Rs/Rso − 0.35), temperatures + 273.16.</summary>
    /// <example>25.1 and 19.1 °C, ea 2.1 kPa, Rs 14.5, Rso 18.8: 3.5 MJ/m² a day (FAO-56 example 11).</example>
    /// <param name="tMinC">Lowest temperature, °C, −100 to 100.</param>
    /// <param name="tMaxC">Highest temperature, °C, not below the lowest.</param>
    /// <param name="vapourKpa">Vapour pressure ea, kPa, 0 or more.</param>
    /// <param name="solarMjM2">Rs, MJ/m² a day, 0 to 60.</param>
    /// <param name="clearSkyMjM2">Rso, MJ/m² a day, 0 to 60; where 0, in the polar night, the sky is taken as overcast.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static double LongWaveMjM2(double tMinC, double tMaxC, double vapourKpa, double solarMjM2, double clearSkyMjM2)
    {
        Must.BeDay(tMinC, tMaxC);
        Must.NotBeNegative(vapourKpa);
        Must.Lie(solarMjM2, 0, 60);
        Must.Lie(clearSkyMjM2, 0, 60);
        var clearness = clearSkyMjM2 > 0 ? Math.Clamp(solarMjM2 / clearSkyMjM2, LeastClearness, 1) : LeastClearness;
        var warmth = (Math.Pow(tMaxC + ZeroCKelvin, 4) + Math.Pow(tMinC + ZeroCKelvin, 4)) / 2;
        return StefanBoltzmann * warmth * (0.34 - (0.14 * Math.Sqrt(vapourKpa))) * ((1.35 * clearness) - 0.35);
    }
}
