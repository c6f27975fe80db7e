namespace Closemown.Turf;

/// <summary>Where the sun stands on a day of the year.</summary>
/// <remarks>
/// FAO-56 eq. 23 to 25. The year is taken as 365 days, day 366 included. Source: Allen, Pereira, Raes &amp; Smith 1998, FAO Irrigation and Drainage Paper 56.
/// </remarks>
/// <example>Day 246, 20° S: distance factor 0.985, declination 0.120, sunset at 1.527 rad (FAO-56 example 8).</example>
public static class SunGeometry
{
    private const double DaysPerYear = 365;

    /// <summary>Inverse relative distance of earth and sun, dr = 1 + 0.033·cos(2πJ/365) (eq. 23): 0.967 to 1.033.</summary>
    /// <param name="dayOfYear">Day of the year J, 1 to 366.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such day.</exception>
    public static double InverseDistance(int dayOfYear) => 1 + (0.033 * Math.Cos(YearRad(dayOfYear)));

    /// <summary>Solar declination δ = 0.409·sin(2πJ/365 − 1.39), rad (eq. 24); north is positive.</summary>
    /// <param name="dayOfYear">Day of the year J, 1 to 366.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such day.</exception>
    public static double DeclinationRad(int dayOfYear) => 0.409 * Math.Sin(YearRad(dayOfYear) - 1.39);

    /// <summary>Sunset hour angle ωs = arccos(−tan φ·tan δ), rad (eq. 25): 0 in the polar night, π where the sun does not set (limits as in the ASCE standard of 2005).</summary>
    /// <param name="latitudeDeg">Latitude φ, °, −90 to 90, north positive.</param>
    /// <param name="dayOfYear">Day of the year J, 1 to 366.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static double SunsetHourAngleRad(double latitudeDeg, int dayOfYear)
    {
        Must.Lie(latitudeDeg, -90, 90);
        return Math.Acos(Math.Clamp(-Math.Tan(double.DegreesToRadians(latitudeDeg)) * Math.Tan(DeclinationRad(dayOfYear)), -1, 1));
    }

    private static double YearRad(int dayOfYear)
    {
        Must.Lie(dayOfYear, 1, 366);
        return 2 * Math.PI * dayOfYear / DaysPerYear;
    }
}
