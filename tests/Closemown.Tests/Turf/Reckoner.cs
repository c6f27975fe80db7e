using Closemown.Turf;

namespace Closemown.Tests.Turf;

/// <summary>Reckons a row with the code under test, in the row's unit.</summary>
internal delegate double[] Reckoner(CheckRow row);

/// <summary>Which reckoner goes with which rows: an id, or the beginning of several.</summary>
internal static class Reckoners
{
    public static IReadOnlyList<(string Ids, Reckoner Of)> All { get; } =
        [.. SunRows.All, .. AirRows.All, .. EvapotranspirationRows.All, .. WaterRows.All, .. GrowthRows.All, .. DiseaseRows.All, .. PhotoRows.All, .. MowingRows.All, .. FeedingRows.All, .. StationRows.All];

    /// <summary>The one reckoner of a row: the longest beginning that fits.</summary>
    public static Reckoner? For(string id) => All.Where(r => id.StartsWith(r.Ids, StringComparison.Ordinal)).OrderByDescending(r => r.Ids.Length).FirstOrDefault().Of;

    public static double[] Yes(bool b) => [b ? 1 : 0];

    public static TurfGrass Grass(CheckRow row) => row.Word("turf") == "warm-season" ? TurfGrass.Warm : TurfGrass.Cool;
}
