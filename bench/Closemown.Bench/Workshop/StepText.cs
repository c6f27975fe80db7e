using System.Globalization;
using System.Text.Json.Nodes;
using Closemown.Entries;

namespace Closemown.Bench.Workshop;

/// <summary>Steps, entries and beliefs on one compact line.</summary>
internal static class StepText
{
    private static readonly HashSet<string> Envelope = ["kind", "unit", "at"];

    public static string Of(JsonNode step)
    {
        var act = (string)step["do"]!;
        if (act == "clicks") return $"clicks {(int?)step["left"] ?? 0:+0;-0;0} {(int?)step["right"] ?? 0:+0;-0;0}";
        if (act == "lap") return $"lap {Number(step["minutes"]!, "0.#")} min";
        return step["stations"] is JsonArray at ? $"{act} {string.Join(' ', at.Select(s => (string?)s))}" : act;
    }

    /// <summary>What a step should lead to: the words of a check with their chances, or the nip.</summary>
    public static string Expects(JsonNode step)
    {
        var parts = new List<string>();
        var expect = step["expect"]!;
        foreach (var s in Stations.All)
        {
            if (expect[s] is JsonObject words) parts.Add($"{s} {string.Join(' ', words.Select(w => $"{w.Key} {Number(w.Value!, "0.00")}"))}");
        }
        if (expect["clearanceUm"] is { } gap) parts.Add($"gap {AtStations(gap)}");
        if (expect["inTolerance"] is { } inside) parts.Add($"in tolerance {Number(inside, "0.00")}, clean {Number(expect["cleanShare"]!, "0.00")}");
        return string.Join(", ", parts);
    }

    public static string Of(JsonObject entry) =>
        $"{entry["kind"]} {string.Join(' ', entry.Where(f => !Envelope.Contains(f.Key)).Select(f => $"{f.Key} {f.Value}"))}".TrimEnd();

    public static string Belief(JsonNode steel) => $"gap {AtStations(steel["clearanceUm"]!)}, edge {AtStations(steel["edgeUm"]!)}";

    public static string Truth(CuttingUnit u) =>
        string.Create(CultureInfo.InvariantCulture, $"gap {u.Gap(0):0} {u.Gap(1):0} {u.Gap(2):0}, edge {u.Edge(0):0.0} {u.Edge(1):0.0} {u.Edge(2):0.0}");

    private static string AtStations(JsonNode q) => string.Join(' ', Stations.All.Select(s => $"{Number(q[s]!["mean"]!, "0")}±{Number(q[s]!["sd"]!, "0")}"));

    private static string Number(JsonNode n, string form) => ((double)n).ToString(form, CultureInfo.InvariantCulture);
}
