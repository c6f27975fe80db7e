using Closemown.Turf;

namespace Closemown.Tests.Turf;

internal static class DiseaseRows
{
    public static IReadOnlyList<(string, Reckoner)> All { get; } =
    [
        ("dollar-", r => [DollarSpot.Probability(r["meanT5"], r["meanRH5"]).Value]),
        ("dollar-threshold", _ => [DollarSpot.Threshold]),
        ("dollar-range", _ => [DollarSpot.MeanC.Low, DollarSpot.MeanC.High]),
        ("brown-", r => [BrownPatch.Index(r["mean RH"], r["Tmin"]).Value]),
        ("brown-threshold", _ => [BrownPatch.Threshold]),
        ("pythium-nutter", r => Reckoners.Yes(PythiumBlight.Favoured(r["Tmin"], r["Tmax"], r["hours RH>90"]))),
    ];
}
