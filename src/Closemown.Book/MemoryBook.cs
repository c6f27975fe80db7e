using Closemown.Entries;

namespace Closemown.Book;

/// <summary>A book in memory: the same rules and the same hashes as a file, kept no longer than the program runs.</summary>
public sealed class MemoryBook : IEntryStore
{
    private readonly Lock gate = new();
    private readonly List<StoredEntry> entries = [];
    private readonly Dictionary<Guid, Entry> byId = [];
    private readonly List<Entry> weather = [];
    private readonly Dictionary<WeatherDay, List<Entry>> byDay = [];
    private long weatherSeq;

    public string Where => BookFile.InMemory;

    public BookDamage? Damage => null;

    public long Count
    {
        get
        {
            lock (gate) return entries.Count;
        }
    }

    public BookStamp Stamp
    {
        get
        {
            lock (gate) return new(entries.Count, weatherSeq);
        }
    }

    public AppendResult Append(Entry entry) => AppendAll([entry], false)[0];

    public IReadOnlyList<AppendResult> AppendAll(IReadOnlyList<Entry> entries, bool allOrNone)
    {
        ArgumentNullException.ThrowIfNull(entries);
        lock (gate)
        {
            var results = new List<AppendResult>(entries.Count);
            if (allOrNone)
            {
                // Tried on a sketch first: nothing here can be rolled back.
                var sketch = new BookSketch(this);
                results.AddRange(entries.Select(sketch.Append));
                if (results.Contains(AppendResult.Conflict)) return Arrivals.Withhold(results);
                results.Clear();
            }
            results.AddRange(entries.Select(AppendOne));
            return results;
        }
    }

    public IReadOnlyList<StoredEntry> ReadAll(long upTo = long.MaxValue)
    {
        lock (gate) return entries.GetRange(0, (int)Math.Clamp(upTo, 0, entries.Count));
    }

    public IReadOnlyList<StoredEntry> ReadAfter(long seq)
    {
        lock (gate) return entries.GetRange((int)seq, entries.Count - (int)seq);
    }

    public IReadOnlyList<StoredEntry> ReadBetween(long after, long upTo)
    {
        lock (gate)
        {
            var from = (int)Math.Clamp(after, 0, entries.Count);
            return entries.GetRange(from, (int)Math.Clamp(upTo, from, entries.Count) - from);
        }
    }

    public IReadOnlyList<Entry> ReadWeather()
    {
        lock (gate) return Arrivals.Latest(weather, entries.Where(s => s.Entry.Voids is not null).Select(s => s.Entry));
    }

    public IReadOnlyList<Entry> ReadWeatherKept()
    {
        lock (gate) return [.. weather];
    }

    public Entry? Find(Guid id)
    {
        lock (gate) return byId.GetValueOrDefault(id);
    }

    public string HashAt(long seq)
    {
        lock (gate)
        {
            ArgumentOutOfRangeException.ThrowIfNegative(seq);
            ArgumentOutOfRangeException.ThrowIfGreaterThan(seq, entries.Count);
            return seq == 0 ? HashChain.Genesis : entries[(int)seq - 1].Hash;
        }
    }

    public void Dispose()
    {
        // Nothing is held open.
    }

    private AppendResult AppendOne(Entry entry)
    {
        var result = Arrivals.Judge(entry, byId.GetValueOrDefault(entry.Id)?.Json, d => byDay.GetValueOrDefault(d) ?? []);
        if (result != AppendResult.Added) return result;
        byId[entry.Id] = entry;
        if (entry.Is(WeatherEntry.Kind))
        {
            var day = WeatherDay.Of(entry);
            if (!byDay.TryGetValue(day, out var same)) byDay[day] = same = [];
            foreach (var old in same.FindAll(e => Arrivals.MayBeDropped(e) && EntryOrder.Instance.Compare(e, entry) < 0))
            {
                weather.Remove(old);
                same.Remove(old);
                byId.Remove(old.Id);
            }
            weather.Add(entry);
            weatherSeq++;
            same.Add(entry);
        }
        else
        {
            entries.Add(new(entries.Count + 1, entry, HashChain.Next(entries.Count == 0 ? HashChain.Genesis : entries[^1].Hash, entry.Json)));
        }
        return result;
    }
}
