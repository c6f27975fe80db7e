using System.Globalization;
using System.Text.RegularExpressions;
using Closemown.Entries;

namespace Closemown.Typing;

/// <summary>A civil day as people type it: "2026-05-01", "1 May", "May 1", "yesterday", "fri".</summary>
public static partial class DayTyped
{
    private static readonly string[] Months = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];

    /// <summary>Reads the day that the words from a place on name.</summary>
    /// <param name="words">The words.</param>
    /// <param name="at">The place.</param>
    /// <param name="today">The day it is.</param>
    /// <param name="ahead">Whether it lies ahead: a weekday is then the next to come, and a day without its year not past. Else a weekday is the last
    /// one, today included, and a day without its year the one nearest today.</param>
    /// <param name="day">The day.</param>
    /// <returns>How many words it has; 0 for none.</returns>
    public static int Read(IReadOnlyList<string> words, int at, DateOnly today, bool ahead, out DateOnly day)
    {
        day = today;
        if (at >= words.Count) return 0;
        var word = words[at].ToLowerInvariant();
        if (word.Contains(' ', StringComparison.Ordinal))
        {
            var parts = word.Split(' ', StringSplitOptions.RemoveEmptyEntries);
            return Read(parts, 0, today, ahead, out day) == parts.Length ? 1 : 0;
        }
        if (DateOnly.TryParseExact(word, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var iso))
        {
            day = iso;
            return 1;
        }
        if (word is "today") return 1;
        if (word is "yesterday" or "tomorrow")
        {
            day = today.AddDays(word == "tomorrow" ? 1 : -1);
            return 1;
        }
        if (WeekdayWords.Day(word) is { } weekday && (ahead || word.Length >= 3))
        {
            day = Enumerable.Range(ahead ? 1 : 0, 7).Select(k => today.AddDays(ahead ? k : -k)).First(d => WeekdayWords.Names[((int)d.DayOfWeek + 6) % 7] == weekday);
            return 1;
        }
        return at + 1 < words.Count ? OfMonth(words, at, today, ahead, out day) : 0;
    }

    /// <summary>Refuses a day such as 1/5, which is one in Britain and another in America.</summary>
    /// <returns>The fault of it.</returns>
    public static TypedFault None(string word, string field) => Slashed().IsMatch(word)
        ? new TypedFault($"{field}: \"{Spelling.Clip(word)}\" may be two different days.", "Write the year first, 2026-05-01, or the month's name: 1 May.")
        : new TypedFault($"{field}: \"{Spelling.Clip(word)}\" is no day.", "Write it like 2026-05-01 or 1 May.");

    private static int OfMonth(IReadOnlyList<string> words, int at, DateOnly today, bool ahead, out DateOnly day)
    {
        day = today;
        var (first, second) = (words[at], words[at + 1]);
        var (month, number) = Month(first) is { } m ? (m, Number(second)) : (Month(second) ?? 0, Number(first));
        if (month == 0 || number is not { } d) return 0;
        var year = at + 2 < words.Count && words[at + 2].Length == 4 && int.TryParse(words[at + 2], NumberStyles.None, CultureInfo.InvariantCulture, out var y) ? y : 0;
        if (d < 1 || d > DateTime.DaysInMonth(year is >= 1900 and <= 2200 ? year : 2024, month)) return 0;
        if (year is >= 1900 and <= 2200)
        {
            day = new DateOnly(year, month, d);
            return 3;
        }
        // Years in which the day exists (29 February).
        var days = Enumerable.Range(-8, 17).Select(k => today.Year + k).Where(k => k is >= 1900 and <= 2200 && d <= DateTime.DaysInMonth(k, month)).Select(k => new DateOnly(k, month, d));
        day = ahead ? days.Where(x => x >= today).DefaultIfEmpty(today).First() : days.MinBy(x => Math.Abs(x.DayNumber - today.DayNumber));
        return 2;
    }

    private static int? Month(string word)
    {
        var i = word.Length >= 3 ? Array.FindIndex(Months, m => word.StartsWith(m, StringComparison.OrdinalIgnoreCase)) : -1;
        var name = i >= 0 ? CultureInfo.InvariantCulture.DateTimeFormat.MonthNames[i] : "";
        return i >= 0 && name.StartsWith(word.TrimEnd('.'), StringComparison.OrdinalIgnoreCase) ? i + 1 : null;
    }

    private static int? Number(string word) => Ordinal().Match(word) is { Success: true } m ? int.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture) : null;

    [GeneratedRegex(@"^([0-9]{1,2})(st|nd|rd|th)?\.?$")]
    private static partial Regex Ordinal();

    [GeneratedRegex(@"^[0-9]{1,2}[/.\-][0-9]{1,2}([/.\-][0-9]{2,4})?$")]
    private static partial Regex Slashed();
}
