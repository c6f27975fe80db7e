namespace Closemown.Typing;

/// <summary>Days of the week: "tue", "Fridays", "tue/fri", "mon-fri", "weekend", "daily".</summary>
public static class WeekdayWords
{
    private static readonly string[] Full = ["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"];

    /// <summary>The names in the contract, Monday first.</summary>
    public static IReadOnlyList<string> Names { get; } = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];

    /// <summary>The one day that a word names; null for none.</summary>
    public static string? Day(string word)
    {
        var plain = word.Trim().TrimEnd('.').ToLowerInvariant();
        if (plain.Length < 2) return null;
        var i = Array.FindIndex(Full, f => f == plain || f + "s" == plain || (plain.Length >= 3 && f.StartsWith(plain, StringComparison.Ordinal)) || f[..3] + "s" == plain || f[..2] == plain);
        return i < 0 ? null : Names[i];
    }

    /// <summary>The days that a word names, several with signs between; null where it names none.</summary>
    public static IReadOnlyList<string>? Days(string word)
    {
        var plain = word.Trim().ToLowerInvariant();
        if (plain is "daily" or "everyday") return Names;
        if (plain is "weekdays" or "workdays") return [.. Names.Take(5)];
        if (plain is "weekend" or "weekends") return ["sat", "sun"];
        var days = new List<string>();
        foreach (var part in plain.Split([',', ';', '/', '&', '+', ' '], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            if (part == "and") continue;
            if (part.Split(['-', '–']) is [var from, var to] && Day(from) is { } a && Day(to) is { } b) days.AddRange(Range(a, b));
            else if (Day(part) is { } day) days.Add(day);
            else return null;
        }
        return days.Count > 0 ? [.. Names.Where(days.Contains)] : null;
    }

    private static IEnumerable<string> Range(string from, string to)
    {
        var names = Names.ToList();
        for (var i = names.IndexOf(from); ; i = (i + 1) % 7)
        {
            yield return names[i];
            if (names[i] == to) yield break;
        }
    }
}
