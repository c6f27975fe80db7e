using Closemown.Entries;

namespace Closemown.Book;

/// <summary>What a day's weather is told apart by.</summary>
internal readonly record struct WeatherDay(string Area, string Date, string Source, bool Forecast)
{
    public static WeatherDay Of(Entry e) => new(e.Area ?? "", e[WeatherEntry.Date] ?? "", e[WeatherEntry.Source] ?? "", e[WeatherEntry.Forecast] ?? false);
}

/// <summary>The rules of what enters a book, the same for every kind of book.</summary>
internal static class Arrivals
{
    /// <summary>What becomes of an entry.</summary>
    /// <param name="entry">The entry.</param>
    /// <param name="known">The line kept under its id, or null.</param>
    /// <param name="sameDay">The weather kept for the same day, where the entry is weather.</param>
    public static AppendResult Judge(Entry entry, string? known, Func<WeatherDay, IEnumerable<Entry>> sameDay)
    {
        if (known is not null) return EntryReader.IsSame(known, entry) ? AppendResult.AlreadyThere : AppendResult.Conflict;
        if (!MayBeDropped(entry)) return AppendResult.Added;
        return sameDay(WeatherDay.Of(entry)).Any(e => EntryOrder.Instance.Compare(e, entry) > 0) ? AppendResult.Superseded : AppendResult.Added;
    }

    /// <summary>Whether weather gives way to later weather for its day: a forecast that corrects nothing.</summary>
    public static bool MayBeDropped(Entry weather) => weather.Is(WeatherEntry.Kind) && weather[WeatherEntry.Forecast] == true && weather.Voids is null;

    /// <summary>The weather that counts, by date, then area and source.</summary>
    /// <param name="kept">All weather kept.</param>
    /// <param name="voiders">The entries of the chain that void something.</param>
    public static IReadOnlyList<Entry> Latest(IEnumerable<Entry> kept, IEnumerable<Entry> voiders)
    {
        var latest = new Dictionary<WeatherDay, Entry>();
        foreach (var e in StandingEntries.Of(kept.Concat(voiders)).Where(e => e.Is(WeatherEntry.Kind))) latest[WeatherDay.Of(e)] = e;
        return [.. latest.OrderBy(p => p.Key.Date, StringComparer.Ordinal).ThenBy(p => p.Key.Area, StringComparer.Ordinal)
            .ThenBy(p => p.Key.Source, StringComparer.Ordinal).ThenBy(p => p.Key.Forecast).Select(p => p.Value)];
    }

    /// <summary>The results where one conflict keeps all out.</summary>
    public static IReadOnlyList<AppendResult> Withhold(IEnumerable<AppendResult> results) =>
        [.. results.Select(r => r == AppendResult.Added ? AppendResult.Withheld : r)];
}
