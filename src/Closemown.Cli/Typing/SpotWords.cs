using System.Text.RegularExpressions;
using Closemown.Entries;

namespace Closemown.Cli;

/// <summary>Standing heights: several numbers are several spots, "5..6" is somewhere between.</summary>
internal static partial class SpotWords
{
    /// <summary>Sets the heights and whatever else was typed.</summary>
    /// <param name="entry">The entry.</param>
    /// <param name="words">What was typed without a field's name.</param>
    /// <returns>Whether there were several spots or a range; else nothing was done.</returns>
    public static bool Place(TypedEntry entry, IReadOnlyList<string> words)
    {
        if (entry.Kind.Name != CanopyEntry.Name) return false;
        words = Ranges(Amounts.Join(entry.Kind, entry.Style, words));
        // A number that its field's name stands before or after is none of the spots.
        bool Named(int at) => at >= 0 && at < words.Count && words[at].Any(char.IsLetter) && !Amounts.IsNumber(words[at]) && FieldNames.Find(entry.Kind, words[at]) is { Form: FieldForm.Number };
        var spots = Enumerable.Range(0, words.Count).Where(i => (Amounts.IsNumber(words[i]) || words[i].StartsWith("..", StringComparison.Ordinal)) && !Named(i - 1)).ToList();
        var heights = spots.Select(i => words[i]).ToList();
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
        new LooseWords(entry).Place([.. words.Where((_, i) => !spots.Contains(i))]);
        return true;
    }

    /// <summary>"5 to 6" and "5-6mm" as 5..6.</summary>
    private static List<string> Ranges(List<string> words)
    {
        var joined = new List<string>();
        for (var i = 0; i < words.Count; i++)
        {
            if (i + 2 < words.Count && words[i + 1] is "to" or "-" && Amounts.IsNumber(words[i]) && Amounts.IsNumber(words[i + 2]))
            {
                joined.Add($"{words[i]}..{words[i + 2]}");
                i += 2;
            }
            else joined.Add(Dash().Replace(words[i], "$1..$2"));
        }
        return joined;
    }

    [GeneratedRegex(@"^(\d+(?:[.,]\d+)?)-(\d+(?:[.,]\d+)?\s*[a-z""]*)$", RegexOptions.IgnoreCase)]
    private static partial Regex Dash();
}
