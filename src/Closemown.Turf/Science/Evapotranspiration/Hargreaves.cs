namespace Closemown.Turf;

/// <summary>Reference evapotranspiration from temperature alone, mm a day.</summary>
/// <remarks>
/// FAO-56 eq. 52 (Hargreaves &amp; Samani 1985): ETo = 0.0023·(Tmean + 17.8)·√(Tmax − Tmin)·Ra, with Ra as the water it evaporates, 0.408 mm for a MJ. It tends to too
/// little in wind over 3 m/s and to too much in moist air, and was made for spans of five days and more (all from memory). Source: Allen, Pereira, Raes
/// &amp; Smith 1998, FAO Irrigation and Drainage Paper 56.
/// </remarks>
/// <example>Lyon, July: 26.6 and 14.8 °C: 5.0 mm a day (FAO-56 example 20).</example>
public static class Hargreaves
{
    private const double Factor = 0.0023, OffsetC = 17.8;

    /// <summary>ETo, mm a day, 0 or more (below −17.8 °C the formula would turn negative).</summary>
    /// <param name="tMinC">Lowest temperature, °C, −100 to 100; marked where the mean is below 0.</param>
    /// <param name="tMaxC">Highest temperature, °C, not below the lowest.</param>
    /// <param name="latitudeDeg">Latitude, °, −90 to 90, north positive; marked beyond 55 in winter.</param>
    /// <param name="dayOfYear">Day of the year, 1 to 366.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static Ranged Mm(double tMinC, double tMaxC, double latitudeDeg, int dayOfYear)
    {
        Must.BeDay(tMinC, tMaxC);
        var sky = ExtraterrestrialRadiation.MjM2(latitudeDeg, dayOfYear);
        var mean = (tMinC + tMaxC) / 2;
        var mm = Factor * (mean + OffsetC) * Math.Sqrt(tMaxC - tMinC) * Fao56.MmPerMj * sky.Value;
        return sky.Give(Math.Max(0, mm)).Mark(ReferenceEvapotranspiration.MeanC.MarkOf(mean));
    }
}
