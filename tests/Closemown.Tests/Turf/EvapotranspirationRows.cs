using Closemown.Turf;

namespace Closemown.Tests.Turf;

internal static class EvapotranspirationRows
{
    private const double KmhPerMs = 3.6;

    public static IReadOnlyList<(string, Reckoner)> All { get; } =
    [
        ("fao-ex17-eto", r => Et0(Day(r) with
        {
            // The example gives vapour pressure itself: the dew point that has it, by inverting eq. 11.
            DewC = 237.3 * Math.Log(r["ea"] / 0.6108) / (17.27 - Math.Log(r["ea"] / 0.6108)), WindMs = r["u2"], SunH = r["n"], SoilHeatMjM2 = r["G"],
        })),
        ("fao-ex18-eto", r => Et0(Day(r) with { RhMaxPct = r["RHmax"], RhMinPct = r["RHmin"], WindMs = r["wind at 10 m"] / KmhPerMs, WindHeightM = 10, SunH = r["n"] })),
        ("fao-ex20-eto", r => Et0(Day(r))),
        ("fao-hargreaves", r => [Hargreaves.Mm(r["Tmin"], r["Tmax"], r["latitude"], r.Int("J")).Value]),
        // Place and height of the wind mast stand in the rows' source.
        ("asce-", r => Et0(new()
        {
            TMinC = r["Tmin"], TMaxC = r["Tmax"], LatitudeDeg = 39.4575, AltitudeM = 1208.5, DayOfYear = r.Int("J"),
            DewC = r["dew point"], RadiationMjM2 = r["Rs"], WindMs = r["wind at 3 m"], WindHeightM = 3,
        })),
        ("kc-", r => [TurfCoefficient.Kc(Reckoners.Grass(r), r.Id switch
        {
            _ when r.Id.EndsWith("initial", StringComparison.Ordinal) => SeasonPart.Initial,
            _ when r.Id.EndsWith("mid", StringComparison.Ordinal) => SeasonPart.Middle,
            _ => SeasonPart.End,
        })]),
    ];

    private static ReferenceWeather Day(CheckRow r) =>
        new() { TMinC = r["Tmin"], TMaxC = r["Tmax"], LatitudeDeg = r["latitude"], AltitudeM = r["altitude"], DayOfYear = r.Int("J") };

    private static double[] Et0(ReferenceWeather day) => [ReferenceEvapotranspiration.Of(day).Mm.Value];
}
