using Closemown.Entries;

namespace Closemown.Cli;

/// <summary>Standing heights: several numbers are several spots, "5..6" is somewhere between.</summary>
internal static class SpotWords
{
    /// <summary>Sets the heights and whatever else was typed.</summary>
    /// <param name="entry">The entry.</param>
    /// <param name="words">What was typed without a field's name.</param>
    /// <returns>Whether there were several spots or a range; else nothing was done.</returns>
    public static bool Place(TypedEntry entry, IReadOnlyList<string> words)
    {
        if (entry.Kind.Name != "canopy") return false;
        var heights = words.Where(w => w.Length > 0 && (char.IsDigit(w[0]) || w[0] == '.')).ToList();
        var range = heights.Find(w => w.Contains("..", StringComparison.Ordinal));
        if (heights.Count < 2 && range is null) return false;
        FieldSpec Field(string name) => entry.Kind.Fields[entry.Kind.IndexOf(name)];
        if (range is not null)
        {
            if (heights.Count > 1) throw CliFault.Refused("A range and other heights do not go together.", "Write either canopy 5..6 after, or a number a spot: canopy 5 5.5 5 after.");
            var parts = range.Split("..", 2);
            var unit = new string([.. parts[1].SkipWhile(c => !char.IsLetter(c) && c != '"')]);
            if (parts[0].Length > 0) entry.Set(Field("lowMm"), parts[0].Any(char.IsLetter) ? parts[0] : $"{parts[0]} {unit}".TrimEnd());
            if (parts[1].Length > 0) entry.Set(Field("highMm"), parts[1]);
        }
        else
        {
            entry.Set(Field("mm"), string.Join(entry.Style.DecimalSign == ',' ? ';' : ',', heights));
        }
        new LooseWords(entry).Place([.. words.Where(w => !heights.Contains(w))]);
        return true;
    }
}
