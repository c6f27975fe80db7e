namespace Closemown.Turf;

/// <summary>Sunshine above the air on a level surface, Ra, MJ/m² a day.</summary>
/// <remarks>
/// FAO-56 eq. 21: Ra = (24·60/π)·Gsc·dr·(ωs·sin φ·sin δ + cos φ·cos δ·sin ωs), Gsc = 0.0820 MJ/m² a minute. In the winter half-year beyond 55° of latitude the
/// paper grants its equations a limited validity (from memory): such values are marked. Source: Allen, Pereira, Raes &amp; Smith 1998, FAO Irrigation and
/// Drainage Paper 56.
/// </remarks>
/// <example>3 September, 20° S: 32.2 MJ/m² a day (FAO-56 example 8).</example>
public static class ExtraterrestrialRadiation
{
    private const double MinutesPerDay = 24 * 60;

    /// <summary>What the paper vouches for in the winter half-year; in summer every latitude.</summary>
    public static PublishedRange WinterLatitudeDeg { get; } = new("latitude in winter", -55, 55, "°");

    /// <summary>Ra, MJ/m² a day, 0 or more; times 0.408 it is mm a day.</summary>
    /// <param name="latitudeDeg">Latitude, °, −90 to 90, north positive; marked beyond 55 in winter.</param>
    /// <param name="dayOfYear">Day of the year, 1 to 366.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static Ranged MjM2(double latitudeDeg, int dayOfYear)
    {
        var sunset = SunGeometry.SunsetHourAngleRad(latitudeDeg, dayOfYear);
        var declination = SunGeometry.DeclinationRad(dayOfYear);
        var latitude = double.DegreesToRadians(latitudeDeg);
        var path = (sunset * Math.Sin(latitude) * Math.Sin(declination)) + (Math.Cos(latitude) * Math.Cos(declination) * Math.Sin(sunset));
        var mj = Math.Max(0, MinutesPerDay / Math.PI * Fao56.SolarConstant * SunGeometry.InverseDistance(dayOfYear) * path);
        return new(mj, latitude * declination < 0 ? WinterLatitudeDeg.MarkOf(latitudeDeg) : null);
    }
}
