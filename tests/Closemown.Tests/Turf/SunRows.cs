using Closemown.Turf;

namespace Closemown.Tests.Turf;

internal static class SunRows
{
    public static IReadOnlyList<(string, Reckoner)> All { get; } =
    [
        ("fao-ex8-ra", Sky), ("fao-ex10-ra", Sky), ("fao-ra-polar-day", Sky),
        ("fao-ex8-dr", r => [SunGeometry.InverseDistance(r.Int("J"))]),
        ("fao-ex8-decl", r => [SunGeometry.DeclinationRad(r.Int("J"))]),
        ("fao-ex8-ws", r => [SunGeometry.SunsetHourAngleRad(r["latitude"], r.Int("J"))]),
        ("fao-daylight-51", r => [DayLength.Hours(r["latitude"], r.Int("J"))]),
        ("fao-ex10-rs", r => [SolarRadiation.FromSunshineMjM2(r["n"], r["N"], r["Ra"]).Value]),
        ("fao-ex11-rnl", r => [NetRadiation.LongWaveMjM2(r["Tmin"], r["Tmax"], r["ea"], r["Rs"], r["Rso"])]),
        ("fao-ex12-rns", r => [NetRadiation.ShortWaveMjM2(r["Rs"])]),
        ("fao-ex17-g", r => [SoilHeatFlux.MonthMjM2(r["T(month)"], r["T(month before)"])]),
        ("fao-ex18-rso", r => [SolarRadiation.ClearSkyMjM2(r["z"], r["Ra"])]),
        ("fao-ex18-rn", r => [NetRadiation.ShortWaveMjM2(r["Rs"])
            - NetRadiation.LongWaveMjM2(r["Tmin"], r["Tmax"], r["ea"], r["Rs"], SolarRadiation.ClearSkyMjM2(r["altitude"], Sky(r)[0]))]),
    ];

    private static double[] Sky(CheckRow r) => [ExtraterrestrialRadiation.MjM2(r["latitude"], r.Int("J")).Value];
}
