using Closemown.Entries;
using Closemown.Turf;

namespace Closemown.Advice;

/// <summary>The standing weather, read when it is first needed and merged for an area when that is asked for.</summary>
/// <param name="read">Reads it from the book; null where there is none.</param>
internal sealed class WeatherShelf(Func<IReadOnlyList<Entry>>? read)
{
    private readonly Dictionary<string, WeatherRecord> records = new(StringComparer.Ordinal);
    private List<Entry>? all;

    /// <summary>All of it, in order.</summary>
    public IReadOnlyList<Entry> All => all ??= [.. read?.Invoke() ?? []];

    /// <summary>Adds what came in; before anything was read it is in the book already, and a correction changes what was read.</summary>
    public void Add(Entry entry)
    {
        records.Clear();
        if (all is null) return;
        if (read is not null && entry.Voids is not null)
        {
            all = null;
            return;
        }
        // A forecast gives way to a later one for its day from the same source.
        if (entry[WeatherEntry.Forecast] == true)
            all.RemoveAll(e => e[WeatherEntry.Forecast] == true && e.Area == entry.Area && e[WeatherEntry.Date] == entry[WeatherEntry.Date] && e[WeatherEntry.Source] == entry[WeatherEntry.Source]);
        all.Add(entry);
    }

    /// <summary>Forgets it; it is read when it is next needed.</summary>
    public void Drop()
    {
        records.Clear();
        if (read is not null) all = null;
    }

    /// <summary>An area's days.</summary>
    public WeatherRecord Of(string area)
    {
        if (!records.TryGetValue(area, out var record)) records[area] = record = WeatherRecord.Of(area, All);
        return record;
    }
}
