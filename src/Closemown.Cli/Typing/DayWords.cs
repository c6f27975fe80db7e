using Closemown.Entries;

namespace Closemown.Cli;

/// <summary>The day on which a thing was done, said among the words: "mow 20min yesterday".</summary>
internal static class DayWords
{
    /// <summary>Takes the day out of the words.</summary>
    /// <exception cref="CliFault">The day lies ahead.</exception>
    public static List<string> Extract(TypedEntry entry, List<string> words)
    {
        if (entry.Today is not { } today || entry.Kind.Name is WeatherEntry.Name or WishEntry.Name) return words;
        for (var i = 0; i < words.Count; i++)
        {
            var n = DayTyped.Read(words, i, today, ahead: false, out var day);
            if (n == 0 || (WeekdayWords.Day(words[i]) is not null && OtherMeaning(entry, words[i]))) continue;
            if (day > today) throw CliFault.Refused($"{EntryWords.Day(day)} lies ahead.", $"Enter what was done; what is planned is told by closemown plan. If it was in another year, write it: {day.AddYears(-1):yyyy-MM-dd}.");
            entry.Day = day;
            words.RemoveRange(i, n);
            return words;
        }
        return words;
    }

    /// <summary>Whether a word that may be a weekday is a value of the kind ("sun": read in the sun) or somebody's name for an area or a unit.</summary>
    private static bool OtherMeaning(TypedEntry entry, string word) => entry.Kind.Fields.Any(f => f.Words.Contains(word, StringComparer.OrdinalIgnoreCase))
        || entry.Names.Areas.Concat(entry.Names.Units).Contains(word, StringComparer.OrdinalIgnoreCase);
}
