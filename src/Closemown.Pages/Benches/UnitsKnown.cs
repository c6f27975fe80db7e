using System.Text.Json.Nodes;

namespace Closemown.Pages;

/// <summary>The cutting units of the book.</summary>
internal static class UnitsKnown
{
    /// <summary>Their names, as the book names them; empty where the book has none.</summary>
    public static async Task<List<string>> Of(IWorkshop workshop)
    {
        return [.. (await All(workshop)).Select(u => (string?)u["unit"] ?? "")];
    }

    /// <summary>Which way an adjuster of a unit goes in; null where the book does not say.</summary>
    public static async Task<string?> InTurns(IWorkshop workshop, string unit) => (string?)(await All(workshop)).FirstOrDefault(u => (string?)u["unit"] == unit)?["inTurns"];

    private static async Task<IEnumerable<JsonObject>> All(IWorkshop workshop) =>
        ((await workshop.Ask(new JsonObject { ["ask"] = "places" }))["places"]?["units"] as JsonArray ?? []).OfType<JsonObject>();
}
