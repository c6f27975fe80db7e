using Closemown.Entries;

namespace Closemown.Cli;

/// <summary>A fit in short: "ok" is everything as it should be, one word of the play is said of both bearings.</summary>
internal static class FitWords
{
    private static readonly string[] Good = ["ok", "okay", "good", "fine", "sound"];

    private static readonly (string Field, string Word)[] Sound = [("playLeft", "none"), ("playRight", "none"), ("knifeScrews", "tight"), ("adjusters", "free"), ("blades", "straight")];

    /// <summary>Sets what the word at a place says of several fields.</summary>
    /// <returns>How many words were used; 0 for none.</returns>
    public static int Take(TypedEntry entry, IReadOnlyList<string> words, int at)
    {
        if (entry.Kind.Name != FitEntry.Name) return 0;
        FieldSpec Field(string name) => entry.Kind.Fields[entry.Kind.IndexOf(name)];
        if (words.Count == 1 && Good.Contains(words[at], StringComparer.OrdinalIgnoreCase))
        {
            foreach (var (field, word) in Sound.Where(s => !entry.Has(s.Field))) entry.Set(Field(field), word);
            return 1;
        }
        if (entry.Has("playLeft") || entry.Has("playRight") || words.Count(w => FieldText.Word(Field("playLeft"), w) is not null) != 1 || FieldText.Word(Field("playLeft"), words[at]) is not { } play) return 0;
        entry.Set(Field("playLeft"), play);
        entry.Set(Field("playRight"), play);
        return 1;
    }
}
