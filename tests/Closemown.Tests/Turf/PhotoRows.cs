using Closemown.Turf;

namespace Closemown.Tests.Turf;

internal static class PhotoRows
{
    public static IReadOnlyList<(string, Reckoner)> All { get; } =
    [
        ("dgci-", r => [DarkGreenColour.Index(r["R"], r["G"], r["B"]).Value]),
        ("canopy-", r => Reckoners.Yes(GreenCover.ByRatios(r["R"], r["G"], r["B"]))),
        ("cover-hue", _ => [GreenCover.HueDeg.Low, GreenCover.HueDeg.High]),
    ];
}
