using Closemown.Entries;

namespace Closemown.Cli;

/// <summary>Values said by side: "left +0.25", "right 1/4 turn", "both 0.5", "left 1 right -1".</summary>
internal static class SideWords
{
    private static readonly string[] Said = ["left", "right", "both"];

    /// <summary>Sets the fields of the sides that are named.</summary>
    /// <param name="entry">The entry.</param>
    /// <param name="words">What was typed without a field's name.</param>
    /// <returns>Whether sides were named; else nothing was done.</returns>
    /// <exception cref="CliFault">A side without a value, or given twice.</exception>
    public static bool Place(TypedEntry entry, IReadOnlyList<string> words)
    {
        if (entry.Kind.Name is not (ScrewEntry.Name or GaugeEntry.Name or ClicksEntry.Name) || !words.Any(w => Said.Contains(w, StringComparer.OrdinalIgnoreCase))) return false;
        var sides = entry.Kind.Fields.Where(f => f.Name.StartsWith("left", StringComparison.Ordinal) || f.Name.StartsWith("right", StringComparison.Ordinal)).ToList();
        var i = 0;
        while (i < words.Count)
        {
            var side = words[i].ToLowerInvariant();
            var value = words.Skip(i + 1).TakeWhile(w => !Said.Contains(w, StringComparer.OrdinalIgnoreCase)).ToList();
            if (!Said.Contains(side)) throw CliFault.Refused($"\"{Spelling.Clip(words[i])}\" does not say which side.", $"Write it like closemown add {ShortForms.Examples[entry.Kind.Name]}.");
            if (value.Count == 0) throw CliFault.Refused($"\"{side}\" has no value.", $"Write it like closemown add {ShortForms.Examples[entry.Kind.Name]}.");
            foreach (var field in sides.Where(f => side == "both" || f.Name.StartsWith(side, StringComparison.Ordinal))) entry.Set(field, string.Join(' ', value));
            i += 1 + value.Count;
        }
        return true;
    }
}
