namespace Closemown.Turf;

/// <summary>Hours from sunrise to sunset of the sun's middle, without the bending of light by the air.</summary>
/// <remarks>
/// FAO-56 eq. 34: N = 24·ωs/π. Almanacs count the sun's upper edge and the bending, and so give more: about 0.2 h at 51° in June. Source: Allen, Pereira,
/// Raes &amp; Smith 1998, FAO Irrigation and Drainage Paper 56.
/// </remarks>
/// <example>51.5° N on day 172: 16.40 h.</example>
public static class DayLength
{
    /// <summary>Day length N, h, 0 to 24.</summary>
    /// <param name="latitudeDeg">Latitude, °, −90 to 90, north positive.</param>
    /// <param name="dayOfYear">Day of the year, 1 to 366.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static double Hours(double latitudeDeg, int dayOfYear) => 24 * SunGeometry.SunsetHourAngleRad(latitudeDeg, dayOfYear) / Math.PI;
}
