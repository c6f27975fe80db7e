using System.Text.Json.Nodes;

namespace Closemown.Pages;

/// <summary>An estimate as answers give it.</summary>
/// <param name="Mean">What is expected.</param>
/// <param name="Sd">Its standard deviation.</param>
/// <param name="P05">Below this with 5 in 100.</param>
/// <param name="P95">Below this with 95 in 100.</param>
public readonly record struct Band(double Mean, double Sd, double P05, double P95)
{
    /// <summary>Reads an estimate of an answer; null where it has none.</summary>
    public static Band? Of(JsonNode? node) =>
        node is JsonObject q && q["mean"] is not null ? new((double)q["mean"]!, (double?)q["sd"] ?? 0, (double?)q["p05"] ?? (double)q["mean"]!, (double?)q["p95"] ?? (double)q["mean"]!) : null;

    /// <summary>The same in another unit.</summary>
    public Band Times(double factor) => new(Mean * factor, Sd * factor, P05 * factor, P95 * factor);
}
