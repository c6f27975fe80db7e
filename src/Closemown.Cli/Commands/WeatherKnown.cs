using System.Text.Json.Nodes;
using Closemown.Entries;

namespace Closemown.Cli;

/// <summary>Weather that the book holds, to tell what is new from what is known: the same day told again stays out, another value takes the old one's place.</summary>
internal sealed class WeatherKnown
{
    private readonly Dictionary<(string Area, string Date, string Source, bool Forecast), Entry> days = [];

    private WeatherKnown()
    {
    }

    /// <summary>Days that were there already with the same values.</summary>
    public int Same { get; private set; }

    public static WeatherKnown Of(IEnumerable<Entry> standing)
    {
        var known = new WeatherKnown();
        foreach (var e in standing) known.days[Key(e)] = e;
        return known;
    }

    /// <summary>The entry as it goes into the book: as it is, or in the place of the one it corrects; null where it says nothing new.</summary>
    /// <param name="e">A day's weather.</param>
    /// <param name="now">When it is stored: a correction is of now.</param>
    public Entry? Corrected(Entry e, DateTimeOffset now)
    {
        if (!days.TryGetValue(Key(e), out var old)) return e;
        if (e.Kind.Fields.All(f => Equals(e[e.Kind.IndexOf(f.Name)], old[old.Kind.IndexOf(f.Name)])))
        {
            Same++;
            return null;
        }
        // Forecasts give way by themselves.
        if (e[WeatherEntry.Forecast] == true) return e;
        var json = JsonNode.Parse(e.Json)!.AsObject();
        json["at"] = now.ToString("yyyy-MM-ddTHH:mm:ss.fffzzz", System.Globalization.CultureInfo.InvariantCulture);
        json["id"] = Guid.CreateVersion7(now).ToString("D");
        json["voids"] = old.Id.ToString("D");
        return EntryReader.Read(json.ToJsonString(), EntryContext.Stored, out var corrected) is { Count: 0 } ? corrected : e;
    }

    private static (string, string, string, bool) Key(Entry e) => (e.Area ?? "", e[WeatherEntry.Date] ?? "", e[WeatherEntry.Source] ?? "", e[WeatherEntry.Forecast] ?? false);
}
