namespace Closemown.Turf;

/// <summary>Sunshine that reaches the ground, MJ/m² a day, where it was not measured; and that of a cloudless day.</summary>
/// <remarks>FAO-56 eq. 35, 37 and 50. Source: Allen, Pereira, Raes &amp; Smith 1998, FAO Irrigation and Drainage Paper 56.</remarks>
public static class SolarRadiation
{
    /// <summary>Ångström's shares of Ra that reach the ground under cloud and, in addition, in full sun, where no local ones are known (FAO-56, eq. 35).</summary>
    public const double CloudShare = 0.25, SunShare = 0.50;

    /// <summary>Factor of eq. 50 inland, and near a coast where the sea rules the air, per √°C.</summary>
    public const double Inland = 0.16, Coast = 0.19;

    private const double ClearShare = 0.75, ClearPerM = 2e-5;

    /// <summary>From hours of sunshine (eq. 35): Rs = (0.25 + 0.50·n/N)·Ra, MJ/m² a day.</summary>
    /// <example>7.1 of 10.9 h, Ra 25.1: 14.5 MJ/m² a day (FAO-56 example 10).</example>
    /// <param name="sunH">Sunshine n, h, 0 to 24; more than the day length counts as all of it; half an hour more is marked.</param>
    /// <param name="dayLengthH">Day length N, h, 0 to 24.</param>
    /// <param name="extraterrestrialMjM2">Ra, MJ/m² a day, 0 to 60.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static Ranged FromSunshineMjM2(double sunH, double dayLengthH, double extraterrestrialMjM2)
    {
        Must.Lie(sunH, 0, 24);
        Must.Lie(dayLengthH, 0, 24);
        Must.Lie(extraterrestrialMjM2, 0, 60);
        var ratio = dayLengthH > 0 ? Math.Min(sunH / dayLengthH, 1) : 0;
        var mark = sunH > dayLengthH + 0.5 ? $"sunshine {Text.N(sunH)} h is longer than the day, {Text.N(dayLengthH)} h" : null;
        return new((CloudShare + (SunShare * ratio)) * extraterrestrialMjM2, mark);
    }

    /// <summary>From the day's span of temperature (eq. 50): Rs = k·√(Tmax − Tmin)·Ra, MJ/m² a day, at most that of a cloudless day.</summary>
    /// <param name="tMinC">Lowest temperature, °C, −100 to 100.</param>
    /// <param name="tMaxC">Highest temperature, °C, not below the lowest.</param>
    /// <param name="extraterrestrialMjM2">Ra, MJ/m² a day, 0 to 60.</param>
    /// <param name="altitudeM">Height above the sea, m, −500 to 9000.</param>
    /// <param name="factor">k, 0.16 inland, 0.19 near a coast.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static double FromTemperatureMjM2(double tMinC, double tMaxC, double extraterrestrialMjM2, double altitudeM, double factor = Inland)
    {
        Must.BeDay(tMinC, tMaxC);
        Must.Lie(factor, 0, 0.5);
        return Math.Min(factor * Math.Sqrt(tMaxC - tMinC) * extraterrestrialMjM2, ClearSkyMjM2(altitudeM, extraterrestrialMjM2));
    }

    /// <summary>Of a cloudless day (eq. 37): Rso = (0.75 + 2·10⁻⁵·z)·Ra, MJ/m² a day.</summary>
    /// <example>100 m, Ra 41.09: 30.90 MJ/m² a day (FAO-56 example 18).</example>
    /// <param name="altitudeM">Height above the sea z, m, −500 to 9000.</param>
    /// <param name="extraterrestrialMjM2">Ra, MJ/m² a day, 0 to 60.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static double ClearSkyMjM2(double altitudeM, double extraterrestrialMjM2)
    {
        Must.Lie(altitudeM, -500, 9000);
        Must.Lie(extraterrestrialMjM2, 0, 60);
        return (ClearShare + (ClearPerM * altitudeM)) * extraterrestrialMjM2;
    }
}
