using Closemown.Turf;

namespace Closemown.Tests.Turf;

internal static class WaterRows
{
    private const double MmPerM = 1000;

    public static IReadOnlyList<(string, Reckoner)> All { get; } =
    [
        ("p-cool", r => [DepletionFraction.OfTable(Reckoners.Grass(r))]),
        ("p-warm", r => [DepletionFraction.OfTable(Reckoners.Grass(r))]),
        ("p-adjust", r => [DepletionFraction.Adjusted(r["p5"], r["ETc"])]),
        ("taw-ex36", r => [Zone(r).TotalMm]),
        ("raw-green", r => [Zone(r).ReadyMm(r["p"])]),
        ("ks-half", r => [WaterStress.Ks(r["TAW"], r["p"], r["Dr"])]),
        ("balance-3d", ThreeDays),
        ("du-16", r => [100 * CatchCans.LowQuarter(r.List("cans"))]),
        ("cu-16", r => [100 * CatchCans.Christiansen(r.List("cans"))]),
        ("du-flat", r => [100 * CatchCans.LowQuarter(r.List("cans"))]),
        ("du-90", r => [100 * CatchCans.ChristiansenOf(r["DU"] / 100)]),
    ];

    private static RootZone Zone(CheckRow r) => new(r["thetaFC"], r["thetaWP"], r["Zr"] * MmPerM);

    private static double[] ThreeDays(CheckRow r)
    {
        var depletion = r["Dr at start"];
        return [.. r.List("ETo").Zip(r.List("rain"), (eto, rain) => depletion = WaterBalance.Day(r["TAW"], r["p"], depletion, r["Kc"] * eto, rain).DepletionMm)];
    }
}
