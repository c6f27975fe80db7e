using Closemown.Book;
using Closemown.Entries;

namespace Closemown.Tests.Book.Model;

/// <summary>What a book ought to be: lists in memory, by rules written anew.</summary>
internal sealed class ListBook
{
    public List<Entry> Chain { get; } = [];

    public List<Entry> Weather { get; } = [];

    /// <summary>What became of each thing done, in words.</summary>
    public List<string> Told { get; } = [];

    private (Entry[] Chain, Entry[] Weather)? copy;

    public void Append(Entry e) => Told.Add(Take(e).ToString());

    public void Import(IReadOnlyList<Entry> entries)
    {
        var results = entries.Select(Take).ToList();
        Told.Add($"{results.Count(r => r == AppendResult.Added)} of {entries.Count}, {results.Count(r => r == AppendResult.Conflict)} bad");
    }

    public void Backup()
    {
        copy = ([.. Chain], [.. Weather]);
        Told.Add($"copied {Chain.Count}");
    }

    /// <summary>Something puts the copy in the book's place while the book is open: refused, then begun anew from the copy.</summary>
    public void Replaced(bool writtenOver)
    {
        if (copy is not { } c || (writtenOver && c.Chain.Length == Chain.Count))
        {
            Told.Add("nothing to replace it with");
            return;
        }
        Told.Add("ChangedOutside");
        Become(c.Chain, c.Weather);
    }

    /// <summary>Something moves the file away, and back again once the program has ended.</summary>
    public void MovedAway() => Told.Add("ChangedOutside");

    public void Restore(bool merge)
    {
        if (copy is not { } c)
        {
            Told.Add("no backup");
            return;
        }
        Entry[] before = [.. Chain, .. Weather];
        Become(c.Chain, c.Weather);
        var known = Chain.Concat(Weather).Select(e => e.Id).ToHashSet();
        var lacking = before.Where(e => !known.Contains(e.Id)).ToList();
        var merged = merge ? lacking.Count(e => Take(e) == AppendResult.Added) : 0;
        Told.Add($"restored, {lacking.Count} lacking, {merged} merged");
    }

    private void Become(Entry[] chain, Entry[] weather)
    {
        Chain.Clear();
        Weather.Clear();
        Chain.AddRange(chain);
        Weather.AddRange(weather);
    }

    private AppendResult Take(Entry e)
    {
        if (Chain.Concat(Weather).FirstOrDefault(k => k.Id == e.Id) is { } known) return known.Json == e.Json ? AppendResult.AlreadyThere : AppendResult.Conflict;
        if (!e.Is(WeatherEntry.Kind))
        {
            Chain.Add(e);
            return AppendResult.Added;
        }
        // Of forecasts for one day the latest is kept; what was recorded is kept whatever comes.
        var day = Weather.Where(w => Forecast(w) && Forecast(e) && w[WeatherEntry.Date] == e[WeatherEntry.Date]).ToList();
        if (day.Exists(w => Later(w, e))) return AppendResult.Superseded;
        Weather.RemoveAll(day.Contains);
        Weather.Add(e);
        return AppendResult.Added;
    }

    private static bool Forecast(Entry e) => e[WeatherEntry.Forecast] == true;

    private static bool Later(Entry one, Entry other) => one.At != other.At ? one.At > other.At : string.CompareOrdinal(one.Id.ToString("D"), other.Id.ToString("D")) > 0;
}
