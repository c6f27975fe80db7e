using Closemown.Turf;

namespace Closemown.Tests.Turf;

internal static class FeedingRows
{
    // 1 lb/1000 ft² and 4 in of the rows, in g/m² and mm.
    private const double Gm2PerPound = 453.59237 / (1000 * 0.3048 * 0.3048), InchMm = 25.4;

    public static IReadOnlyList<(string, Reckoner)> All { get; } =
    [
        ("mlsn-K", _ => [SoilGuideline.MgKg(SoilNutrient.Potassium).Value]),
        ("mlsn-P", _ => [SoilGuideline.MgKg(SoilNutrient.Phosphorus).Value]),
        ("mlsn-Ca", _ => [SoilGuideline.MgKg(SoilNutrient.Calcium).Value]),
        ("mlsn-Mg", _ => [SoilGuideline.MgKg(SoilNutrient.Magnesium).Value]),
        ("mlsn-S", _ => [SoilGuideline.MgKg(SoilNutrient.Sulphur).Value]),
        ("mlsn-need", r => [SoilNeed.Of(r["use"], r["MLSN"], r["soil"])]),
        ("mlsn-depth", r => [Gm2PerPound / SoilNeed.Gm2(1, r["depth"] * InchMm)]),
        ("water-k", r => [IrrigationNutrient.Gm2(r["irrigation"], r["K"])]),
        ("n-by-gp", r => [NitrogenByGrowth.MonthGm2(r["maximum"], r["mean T"], TurfGrass.Cool)]),
    ];
}
