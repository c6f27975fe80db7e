using Closemown.Entries;

namespace Closemown.Book;

/// <summary>Says what appending would do to a book, without doing it.</summary>
internal sealed class BookSketch(IEntryStore book)
{
    private readonly Dictionary<Guid, string?> changed = [];       // null: a forecast that would be dropped
    private Dictionary<WeatherDay, List<Entry>>? weather;

    public AppendResult Append(Entry entry)
    {
        var known = changed.TryGetValue(entry.Id, out var json) ? json : book.Find(entry.Id)?.Json;
        var result = Arrivals.Judge(entry, known, SameDay);
        if (result != AppendResult.Added) return result;
        changed[entry.Id] = entry.Json;
        if (!entry.Is(WeatherEntry.Kind)) return result;
        var day = SameDay(WeatherDay.Of(entry));
        foreach (var old in day.FindAll(e => Arrivals.MayBeDropped(e) && EntryOrder.Instance.Compare(e, entry) < 0))
        {
            day.Remove(old);
            changed[old.Id] = null;
        }
        day.Add(entry);
        return result;
    }

    private List<Entry> SameDay(WeatherDay day)
    {
        weather ??= book.ReadWeatherKept().GroupBy(WeatherDay.Of).ToDictionary(g => g.Key, g => g.ToList());
        if (!weather.TryGetValue(day, out var list)) weather[day] = list = [];
        return list;
    }
}
