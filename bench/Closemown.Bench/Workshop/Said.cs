using System.Text.Json.Nodes;
using Closemown.Entries;

namespace Closemown.Bench.Workshop;

/// <summary>What Closemown said of a number before a mowing, beside what it truly was.</summary>
/// <param name="What">The number.</param>
/// <param name="At">Which station or side.</param>
/// <param name="Mowing">Before which mowing, from 1.</param>
/// <param name="Truth">What it was.</param>
/// <param name="Mean">Mean said.</param>
/// <param name="Sd">Spread said.</param>
/// <param name="P05">Lower end of the 90 % interval.</param>
/// <param name="P95">Upper end.</param>
internal readonly record struct Said(string What, int At, int Mowing, double Truth, double Mean, double Sd, double P05, double P95)
{
    private const double Z75 = 0.6744897501960817;
    private const double Z995 = 2.5758293035489004;

    /// <summary>Whether the interval of so many in a hundred held: 50, 90 or 99.</summary>
    public bool Holds(int percent) => percent switch
    {
        50 => Math.Abs(Truth - Mean) <= Z75 * Sd,
        90 => Truth >= P05 && Truth <= P95,
        99 => Math.Abs(Truth - Mean) <= Z995 * Sd,
        _ => throw new ArgumentOutOfRangeException(nameof(percent)),
    };

    /// <summary>All that is compared, from the answer about the steel. The hourly opening is the unit's own rate while nothing presses.</summary>
    public static IEnumerable<Said> Before(int mowing, CuttingUnit unit, JsonNode steel)
    {
        for (var s = 0; s < 3; s++)
        {
            yield return Of("clearance", s, mowing, unit.Gap(s), steel["clearanceUm"]![Stations.All[s]]!);
            yield return Of("edge", s, mowing, unit.Edge(s), steel["edgeUm"]![Stations.All[s]]!);
        }
        yield return Of("usable gap", 0, mowing, Enumerable.Range(0, 3).Max(s => unit.Gap(s) + unit.Edge(s)), steel["usableGapUm"]!);
        for (var side = 0; side < 2; side++)
        {
            var name = Stations.All[side * 2];
            yield return Of("click", side, mowing, unit.Make.ClickUm[side], steel["clickUm"]![name]!);
            if (!unit.Make.OtherWear) yield return Of("opening an hour", side, mowing, unit.Make.OpeningUmPerHour[side], steel["openingUmPerHour"]![name]!);
        }
        yield return Of("lap opening", 0, mowing, unit.Make.LapUmPerMinute, steel["lapUmPerMinute"]!);
    }

    private static Said Of(string what, int at, int mowing, double truth, JsonNode q) => new(what, at, mowing, truth, (double)q["mean"]!, (double)q["sd"]!, (double)q["p05"]!, (double)q["p95"]!);
}
