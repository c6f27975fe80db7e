using System.Text.Json.Nodes;

namespace Closemown.Bench.Heights;

/// <summary>What was said of a number, beside what it truly was; all in mm.</summary>
/// <param name="What">The number.</param>
/// <param name="When">Which setting or mowing, from 1.</param>
/// <param name="Truth">What it was.</param>
/// <param name="Mean">Mean said.</param>
/// <param name="Sd">Spread said.</param>
/// <param name="P05">Lower end of the 90 % interval.</param>
/// <param name="P95">Upper end.</param>
internal readonly record struct HeightSaid(string What, int When, double Truth, double Mean, double Sd, double P05, double P95)
{
    private const double Z75 = 0.6744897501960817;

    public bool Half => Math.Abs(Truth - Mean) <= Z75 * Sd;

    public bool Ninety => Truth >= P05 && Truth <= P95;

    public static HeightSaid Of(string what, int when, double truth, JsonNode q) => new(what, when, truth, (double)q["mean"]!, (double)q["sd"]!, (double)q["p05"]!, (double)q["p95"]!);
}
