using System.Text.Json.Nodes;

namespace Closemown.Pages;

/// <summary>The cutting units of the book.</summary>
internal static class UnitsKnown
{
    /// <summary>Their names, as today names them; empty where the book has none.</summary>
    public static async Task<List<string>> Of(IWorkshop workshop)
    {
        var today = await workshop.Ask(new JsonObject { ["ask"] = "today" });
        return [.. (today["today"]?["steel"] as JsonArray ?? []).Select(s => (string?)s!["unit"] ?? "").Where(u => u.Length > 0)];
    }
}
