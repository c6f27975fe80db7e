using System.Text.Json.Nodes;
using Closemown.Entries;

namespace Closemown.Advice;

/// <summary>The cutting units and turf areas of the book, each as it is described now.</summary>
public static class PlacesAnswer
{
    /// <summary>The answer: <c>units</c> and <c>areas</c>, each a list by name; a described one carries the fields that its descriptions told, the latest of each.</summary>
    public static JsonObject Of(Desk desk)
    {
        ArgumentNullException.ThrowIfNull(desk);
        return new()
        {
            ["units"] = new JsonArray([.. desk.Units.Select(u => (JsonNode)Described(desk, UnitEntry.Kind, u, e => e.Unit == u))]),
            ["areas"] = new JsonArray([.. desk.Areas.Select(a => (JsonNode)Described(desk, AreaEntry.Kind, a, e => e.Area == a))]),
        };
    }

    private static JsonObject Described(Desk desk, KindSpec kind, string name, Func<Entry, bool> own)
    {
        var place = new JsonObject { [kind.Name] = name };
        foreach (var entry in desk.Standing.Where(e => e.Is(kind) && own(e)))
        {
            var told = JsonNode.Parse(entry.Json)!.AsObject();
            foreach (var field in entry.Kind.Fields)
            {
                if (told[field.Name] is { } value) place[field.Name] = value.DeepClone();
            }
        }
        return place;
    }
}
