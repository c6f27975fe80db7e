using Closemown.Steel.Reckonings;
using Closemown.Turf;

namespace Closemown.Tests.Turf;

internal static class MowingRows
{
    private const double InchMm = 25.4, FootM = 0.3048, Gravity = 9.80665;

    public static IReadOnlyList<(string, Reckoner)> All { get; } =
    [
        ("third-", r => [ThirdRule.CanopyMm(r["cut height"] * InchMm) / InchMm]),
        ("third-4mm", r => [ThirdRule.CanopyMm(r["cut height"])]),
        ("third-trap", r => [ShareRemoved.Of(r["canopy"] * InchMm, r["cut height"] * InchMm)]),
        ("share-daily", r => [ShareRemoved.Of(r["cut height"] + r["growth"], r["cut height"])]),
        ("hoc-creeping", _ => [MowingHeights.CreepingBentgrassGreen.LowMm / InchMm]),
        ("hoc-hybrid", _ => [MowingHeights.HybridBermudagrassGreen.LowMm / InchMm]),
        ("hoc-zoysia", _ => [MowingHeights.ZoysiagrassTee.LowMm / InchMm]),
        ("hoc-rye", _ => [MowingHeights.PerennialRyegrassTee.LowMm / InchMm]),
        ("hoc-bent-range", _ => [MowingHeights.CreepingBentgrass.LowMm / InchMm, MowingHeights.CreepingBentgrass.HighMm / InchMm]),
        ("hoc-fescue", _ => [MowingHeights.FineFescues.LowMm, MowingHeights.FineFescues.HighMm]),
        // The middle height of the trial lies between those kept.
        ("hoc-poa", _ => [MowingHeights.AnnualBluegrassGreen.LowMm, (MowingHeights.AnnualBluegrassGreen.LowMm + MowingHeights.AnnualBluegrassGreen.HighMm) / 2, MowingHeights.AnnualBluegrassGreen.HighMm]),
        ("hoc-bowls", _ => [MowingHeights.BowlingGreen.LowMm]),
        ("hoc-croquet", _ => [MowingHeights.CroquetLawn.LowMm]),
        ("clip-cpm", r => [ClipForHeight.OfCutsPerMetreMm(r["cuts per metre"])]),
        ("clip-height", r => [Enumerable.Range(1, 100).Where(tenths => ClipForHeight.Suits(tenths / 10.0, r["cut height"])).Max() / 10.0]),
        ("clippings-unit", r => [ClippingVolume.MlM2(r["volume"], 100)]),
        ("clippings-range", _ => [ClippingVolume.VigorousMlM2.Low, ClippingVolume.VigorousMlM2.High]),
        ("clippings-dry", r => [ClippingVolume.OfDryMlM2(r["dry"])]),
        ("clippings-n", r => [ClippingVolume.NitrogenGm2(r["clippings"])]),
        ("speed-", r => [GreenSpeed.Corrected(r["up"] * FootM, r["down"] * FootM) / FootM]),
        ("speed-identity", r => [RolledOnSlope(r["level roll"], r["slope"] / 100, r["v0"])]),
        ("speed-decel", r => [GreenSpeed.DecelerationMs2(r["S"], r["v0"])]),
        ("speed-valid", _ => [GreenSpeed.PlainMeanDifferenceM * 1000 / InchMm]),
    ];

    /// <summary>A ball that slows evenly, rolled up and down a slope, and corrected.</summary>
    private static double RolledOnSlope(double levelM, double slope, double releaseMs)
    {
        double slowing = releaseMs * releaseMs / (2 * levelM), weight = Gravity * slope;
        return GreenSpeed.Corrected(releaseMs * releaseMs / (2 * (slowing + weight)), releaseMs * releaseMs / (2 * (slowing - weight)));
    }
}
