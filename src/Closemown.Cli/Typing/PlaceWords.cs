using Closemown.Entries;

namespace Closemown.Cli;

/// <summary>The area's or the unit's name among the words, wherever it stands.</summary>
internal static class PlaceWords
{
    /// <summary>Kinds whose words leave no doubt that one more is the name of an area, also of the first one.</summary>
    public static IReadOnlyList<string> Plain { get; } = ["mow", "clippings", "water", "feed", "work", "pace", "wish", "weather", "soil-test"];

    /// <summary>Takes a name from the words at a place.</summary>
    /// <returns>How many words were used; 0 for none.</returns>
    public static int Take(TypedEntry entry, IReadOnlyList<string> words, int at)
    {
        var kind = entry.Kind;
        if (kind.Belongs is Belongs.Area or Belongs.UnitAndArea && entry.Area is null)
        {
            if (BookNames.At(entry.Names.Areas, words, at) is var (area, n))
            {
                entry.Area = area;
                return n;
            }
            if (entry.Names.Areas.Count == 0 && First(entry, words, at))
            {
                entry.Area = words[at];
                return 1;
            }
        }
        if (kind.Belongs is Belongs.Unit or Belongs.UnitAndArea && entry.Unit is null && BookNames.At(entry.Names.Units, words, at) is var (unit, m))
        {
            entry.Unit = unit;
            return m;
        }
        return 0;
    }

    /// <summary>Whether a word can name the first area of a book that has none: no unit after a bare number, no slip of a word that is known.</summary>
    private static bool First(TypedEntry entry, IReadOnlyList<string> words, int at)
    {
        var word = words[at];
        if (!Plain.Contains(entry.Kind.Name) || (at > 0 && Amounts.IsBare(words[at - 1]))) return false;
        if (!char.IsLetter(word[0]) || !word.All(c => char.IsLetterOrDigit(c) || c is '-' or '_')) return false;
        if (entry.Kind.Fields.Any(f => f.Required && f.Form == FieldForm.Word && !entry.Has(f.Name))) return false;
        return Spelling.Nearest(word, LooseWords.Known(entry.Kind)) is null;
    }
}
