namespace Closemown.Turf;

/// <summary>Reference evapotranspiration of a day.</summary>
/// <param name="Mm">ETo, mm, 0 or more, with the mark of what lies outside the published range.</param>
/// <param name="Substitutes">What was not read.</param>
public readonly record struct ReferenceDay(Ranged Mm, Substitutes Substitutes);

/// <summary>Reference evapotranspiration by FAO-56 Penman-Monteith, from a day's weather, with the paper's substitutes for what was not read.</summary>
/// <remarks>
/// Eq. 6 with its steps: 7, 8 (pressure), 11 to 13 (saturation), 14, 17 to 19 or 48 (humidity), 21 to 25 (sun), 34, 35, 37 to 40 or 50 (radiation), 47 (wind).
/// The reference is grass that grows and lacks no water: days whose mean is below 0 °C are marked, as are latitudes beyond 55° in winter, odd heights of the wind
/// reading, and radiation that cannot be. Less than 0 (dew settling) counts as 0. In dry air wind raises it, in moist air it may lower it; in a dead calm more
/// warmth may lower it, as more is radiated away.
/// Source: Allen, Pereira, Raes &amp; Smith 1998, FAO Irrigation and Drainage Paper 56.
/// </remarks>
/// <example>Uccle, 6 July: 21.5 and 12.3 °C, 63 to 84 %, wind 10 km/h at 10 m, 9.25 h of sun: 3.9 mm (FAO-56 example 18).</example>
public static class ReferenceEvapotranspiration
{
    /// <summary>Mean temperatures at which grass grows at all: below, the equation's crop does not exist. Our reading of the paper's definition of its crop; it prints no range.</summary>
    public static PublishedRange MeanC { get; } = new("mean temperature", 0, 50, "°C");

    /// <summary>The day's reference evapotranspiration.</summary>
    /// <param name="weather">The day.</param>
    /// <exception cref="ArgumentOutOfRangeException">A reading cannot be: see <see cref="ReferenceWeather"/>.</exception>
    public static ReferenceDay Of(ReferenceWeather weather)
    {
        ArgumentNullException.ThrowIfNull(weather);
        Must.BeDay(weather.TMinC, weather.TMaxC);
        var mean = (weather.TMinC + weather.TMaxC) / 2;
        var (vapour, humidity) = Vapour(weather);
        var wind = weather.WindMs is { } read ? WindProfile.At2M(read, weather.WindHeightM) : new(WindProfile.UntoldMs);
        var sky = ExtraterrestrialRadiation.MjM2(weather.LatitudeDeg, weather.DayOfYear);
        var (solar, radiation) = Solar(weather, sky.Value);
        var clear = SolarRadiation.ClearSkyMjM2(weather.AltitudeM, sky.Value);
        var net = NetRadiation.ShortWaveMjM2(solar.Value) - NetRadiation.LongWaveMjM2(weather.TMinC, weather.TMaxC, vapour, solar.Value, clear);
        var deficit = SaturationVapourPressure.MeanKpa(weather.TMinC, weather.TMaxC) - vapour;
        var gamma = AirPressure.PsychrometricKpaPerC(AirPressure.Kpa(weather.AltitudeM));
        var mm = PenmanMonteith.Mm(mean, net, weather.SoilHeatMjM2, wind.Value, deficit, gamma);
        var marked = new Ranged(Math.Max(0, mm)).Mark(MeanC.MarkOf(mean)).Mark(sky.Outside).Mark(solar.Outside).Mark(wind.Outside);
        return new(marked, humidity | radiation | (weather.WindMs is null ? Substitutes.Wind : Substitutes.None));
    }

    private static (double Kpa, Substitutes By) Vapour(ReferenceWeather weather) => weather switch
    {
        { DewC: { } dew } when dew > weather.TMaxC => throw new ArgumentOutOfRangeException(nameof(weather), dew, $"The dew point is not above the day's highest temperature, {Text.N(weather.TMaxC)}."),
        { DewC: { } dew } => (VapourPressure.FromDewPointKpa(dew), Substitutes.None),
        { RhMinPct: { } low, RhMaxPct: { } high } => (VapourPressure.FromHumiditiesKpa(weather.TMinC, weather.TMaxC, low, high), Substitutes.None),
        { RhMaxPct: { } high } => (VapourPressure.FromHighestHumidityKpa(weather.TMinC, high), Substitutes.None),
        { RhMeanPct: { } mean } => (VapourPressure.FromMeanHumidityKpa(weather.TMinC, weather.TMaxC, mean), Substitutes.HumidityFromMean),
        _ => (VapourPressure.FromLowestTemperatureKpa(weather.TMinC), Substitutes.HumidityFromTemperature),
    };

    private static (Ranged MjM2, Substitutes By) Solar(ReferenceWeather weather, double sky) => weather switch
    {
        { RadiationMjM2: { } read } => (new Ranged(read).Mark(read > sky ? $"radiation {Text.N(read)} MJ/m² is more than reaches the top of the air, {Text.N(sky)}" : null), Substitutes.None),
        { SunH: { } sun } => (SolarRadiation.FromSunshineMjM2(sun, DayLength.Hours(weather.LatitudeDeg, weather.DayOfYear), sky), Substitutes.RadiationFromSunshine),
        _ => (new(SolarRadiation.FromTemperatureMjM2(weather.TMinC, weather.TMaxC, sky, weather.AltitudeM, weather.Coast ? SolarRadiation.Coast : SolarRadiation.Inland)), Substitutes.RadiationFromTemperature),
    };
}
