using Closemown.Turf;

namespace Closemown.Tests.Turf;

internal static class AirRows
{
    private const double PaPerKpa = 1000, KmhPerMs = 3.6;

    public static IReadOnlyList<(string, Reckoner)> All { get; } =
    [
        ("fao-ex2-p", r => [AirPressure.Kpa(r["z"])]),
        ("fao-ex2-gamma", r => [AirPressure.PsychrometricKpaPerC(r["P"])]),
        ("fao-ex3-tm", r => [SaturationVapourPressure.Kpa(r["T"])]),
        ("fao-ex3-es", Mean), ("fao-ex17-es", Mean),
        ("fao-ex5-ea", Humidities), ("fao-ex18-ea", Humidities),
        ("fao-ex5-ea-mean", r => [VapourPressure.FromMeanHumidityKpa(r["Tmin"], r["Tmax"], r["RHmean"])]),
        ("fao-ex17-delta", r => [SaturationVapourPressure.SlopeKpaPerC(r["T(month)"])]),
        ("fao-ex17-gamma", r => [AirPressure.PsychrometricKpaPerC(AirPressure.Kpa(r["altitude"]))]),
        ("fao-ex18-u2", r => [WindProfile.At2M(r["wind at 10 m"] / KmhPerMs, 10).Value]),
        ("fao-ex20-ea", r => [VapourPressure.FromLowestTemperatureKpa(r["Tmin"])]),
        ("dew-25-60", Dew), ("dew-round", Dew),
        ("dew-fao", r => [DewPoint.FromVapourPressureC(r["ea"])]),
        ("stull-", r => [WetBulb.C(r["T"], r["RH"]).Value]),
        ("svp-ashrae-", r => [PaPerKpa * SaturationVapourPressure.Kpa(r["T"])]),
        ("svp-ice-20", r => [PaPerKpa * IceVapourPressure.Kpa(r["T"]).Value]),
        ("ashrae-ex1-rh", r => [100 * VapourPressure.FromWetBulbKpa(r["T"], r["wet bulb"], r["P"]) / SaturationVapourPressure.Kpa(r["T"])]),
        ("atm-500", r => [AirPressure.Kpa(r["z"])]),
        ("soil-damping-day", r => [SoilWarmth.DampingDepthM(r["alpha"], r["period"] / 86400)]),
        ("soil-lag-year", r => [SoilWarmth.LagDays(r["z"], r["alpha"])]),
        ("wet-rh90", _ => [Enumerable.Range(0, 101).First(rh => LeafWetness.Wet(rh))]),
    ];

    private static double[] Mean(CheckRow r) => [SaturationVapourPressure.MeanKpa(r["Tmin"], r["Tmax"])];

    private static double[] Humidities(CheckRow r) => [VapourPressure.FromHumiditiesKpa(r["Tmin"], r["Tmax"], r["RHmin"], r["RHmax"])];

    private static double[] Dew(CheckRow r) => [DewPoint.C(r["T"], r["RH"]).Value];
}
