using System.Text.Json.Nodes;
using Closemown.Entries;
using Closemown.Quantities;

namespace Closemown.Typing;

/// <summary>Starting values as typed: "openingUmPerHour 3±2; clickUm 18 +- 1".</summary>
internal static class PriorText
{
    private const string Example = "Write it like priors=\"openingUmPerHour 3±2; clickUm 18±1\": mean, ± (or +-), and about how far off.";

    /// <summary>Reads the text into {name: [mean, sd]}; names and ranges are judged with the entry.</summary>
    /// <exception cref="TypedFault">The text is none.</exception>
    public static JsonObject Read(FieldSpec field, string text, WritingStyle style)
    {
        var priors = new JsonObject();
        foreach (var part in text.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            var space = part.IndexOf(' ', StringComparison.Ordinal);
            var sides = space < 0 ? [] : part[(space + 1)..].Replace("+-", "±", StringComparison.Ordinal).Split('±', StringSplitOptions.TrimEntries);
            if (sides.Length != 2) throw new TypedFault($"\"{Spelling.Clip(part)}\" is no starting value.", Example);
            priors[part[..space]] = new JsonArray(Value(field, sides[0], style), Value(field, sides[1], style));
        }
        return priors.Count > 0 ? priors : throw new TypedFault("There is no starting value in it.", Example);
    }

    private static double Value(FieldSpec field, string text, WritingStyle style) =>
        Number.TryParse(text, style, null, out var n, out var fault) ? n.Value : throw new TypedFault($"{field.Name}: {fault.Message}", $"{fault.Render()}\n{Example}");
}
