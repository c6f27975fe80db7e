using System.Globalization;
using Closemown.Entries;

namespace Closemown.Cli;

/// <summary>What is wished, as people say it: "4 mm by 1 May", "tue and fri", "match 9 May".</summary>
internal static class WishWords
{
    private static readonly string[] By = ["by", "until", "till", "before"];
    private static readonly string[] Match = ["match", "matches", "fixture", "fixtures", "game", "games", "tournament"];

    /// <summary>Takes a day to be ready by, days of matches or usual days from the words at a place.</summary>
    /// <returns>How many words were used; 0 for none.</returns>
    /// <exception cref="CliFault">A day that is none, or one of which nothing is said.</exception>
    public static int Take(TypedEntry entry, IReadOnlyList<string> words, int at)
    {
        if (entry.Kind.Name != WishEntry.Name || entry.Today is not { } today) return 0;
        var word = words[at].ToLowerInvariant();
        if (By.Contains(word) && at + 1 < words.Count)
        {
            var n = DayTyped.Read(words, at + 1, today, ahead: true, out var day);
            if (n == 0) throw DayTyped.None(words[at + 1], "by when");
            entry.Set(Field(entry, "byDate"), Iso(day));
            return 1 + n;
        }
        if (Match.Contains(word)) return Matches(entry, words, at, today);
        if (word == "every" && at + 1 < words.Count && words[at + 1].Equals("day", StringComparison.OrdinalIgnoreCase))
        {
            Weekdays(entry, WeekdayWords.Names);
            return 2;
        }
        if (WeekdayWords.Days(word) is { } days)
        {
            Weekdays(entry, days);
            return 1;
        }
        if (DayTyped.Read(words, at, today, ahead: true, out var bare) > 0)
            throw CliFault.Refused($"It is not said what is on {EntryWords.Day(bare)}.", $"Write by {Iso(bare)} for the day by which the height is wanted, or match {Iso(bare)}.");
        return 0;
    }

    private static int Matches(TypedEntry entry, IReadOnlyList<string> words, int at, DateOnly today)
    {
        var (used, dates) = (1, new List<string>());
        while (at + used < words.Count)
        {
            if (words[at + used].ToLowerInvariant() is "on" or "and" or "," or "&")
            {
                used++;
                continue;
            }
            var n = DayTyped.Read([.. words.Select(w => w.TrimEnd(','))], at + used, today, ahead: true, out var day);
            // "match 9 May tue fri": a weekday alone after the first day is a usual day.
            if (n == 0 || (dates.Count > 0 && WeekdayWords.Day(words[at + used]) is not null)) break;
            dates.Add(Iso(day));
            used += n;
        }
        if (dates.Count == 0) throw at + 1 < words.Count ? DayTyped.None(words[at + 1], "match") : CliFault.Refused("It is not said when the match is.", "Write match 2026-05-09.");
        entry.Set(Field(entry, "fixtures"), string.Join(',', dates));
        return used;
    }

    private static void Weekdays(TypedEntry entry, IReadOnlyList<string> days)
    {
        var known = entry.List("weekdays");
        entry.Drop("weekdays");
        entry.Set(Field(entry, "weekdays"), string.Join(entry.Style.DecimalSign == ',' ? ';' : ',', WeekdayWords.Names.Where(d => days.Contains(d) || known.Contains(d))));
    }

    private static Entries.FieldSpec Field(TypedEntry entry, string name) => entry.Kind.Fields[entry.Kind.IndexOf(name)];

    private static string Iso(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
