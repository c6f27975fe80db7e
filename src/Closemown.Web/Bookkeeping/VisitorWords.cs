using System.Text.Json.Nodes;
using Closemown.Advice;
using Closemown.Quantities;

namespace Closemown.Web;

/// <summary>The words in which a visitor is answered.</summary>
internal static class VisitorWords
{
    /// <summary>The visitor's words and units, and no command to type.</summary>
    /// <remarks>A step of the adjuster by what the unit calls it, where all units that are meant call it the same.</remarks>
    public static Phrasing Of(Desk desk, string question, WritingStyle style)
    {
        var named = JsonNode.Parse(question)?["unit"] is JsonValue v && v.TryGetValue<string>(out var unit) ? unit : null;
        var steps = desk.Units.Where(u => named is null || u == named).Select(u => desk.Track(u).Unit.AdjusterStep).Distinct().ToList();
        return steps is [var one] ? new(style, one) { Commands = false } : new(style) { Commands = false };
    }
}
