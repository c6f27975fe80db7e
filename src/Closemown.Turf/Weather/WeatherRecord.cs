using System.Globalization;
using Closemown.Entries;

namespace Closemown.Turf;

/// <summary>An area's weather by day, merged from all its sources.</summary>
/// <remarks>
/// Field by field the best source counts: what was recorded before any forecast; among records what the person typed (no source told), then the
/// sources in the order given, then the others by name; among the same the later entry.
/// </remarks>
public sealed class WeatherRecord
{
    private readonly SortedDictionary<DateOnly, DayWeather> days = [];

    private WeatherRecord()
    {
    }

    /// <summary>No weather at all.</summary>
    public static WeatherRecord None { get; } = new();

    /// <summary>The first day with any weather; null where there is none.</summary>
    public DateOnly? First => days.Count > 0 ? days.First().Key : null;

    /// <summary>The last day with any weather, forecasts included; null where there is none.</summary>
    public DateOnly? Last => days.Count > 0 ? days.Last().Key : null;

    /// <summary>The last day that is a record.</summary>
    public DateOnly? LastRecorded { get; private set; }

    /// <summary>Days with any weather.</summary>
    public int Count => days.Count;

    /// <summary>The days, in order.</summary>
    public IEnumerable<DayWeather> Days => days.Values;

    /// <summary>One day's weather, or null.</summary>
    public DayWeather? On(DateOnly date) => days.GetValueOrDefault(date);

    /// <summary>Days missing between the first and the last, as stretches.</summary>
    public IEnumerable<(DateOnly From, DateOnly To)> Gaps()
    {
        DateOnly? before = null;
        foreach (var day in days.Keys)
        {
            if (before is { } b && day > b.AddDays(1)) yield return (b.AddDays(1), day.AddDays(-1));
            before = day;
        }
    }

    /// <summary>Merges the weather of one area.</summary>
    /// <param name="area">The area.</param>
    /// <param name="weather">Standing entries of kind <c>weather</c>, in order; those of other areas are passed over.</param>
    /// <param name="sources">Names of sources, the most trusted first; null for none preferred.</param>
    public static WeatherRecord Of(string area, IEnumerable<Entry> weather, IReadOnlyList<string>? sources = null)
    {
        ArgumentNullException.ThrowIfNull(weather);
        var record = new WeatherRecord();
        var byDay = new Dictionary<DateOnly, List<Entry>>();
        foreach (var e in weather)
        {
            if (e.Area != area || !DateOnly.TryParseExact(e[WeatherEntry.Date], "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)) continue;
            if (!byDay.TryGetValue(date, out var list)) byDay[date] = list = [];
            list.Add(e);
        }
        foreach (var (date, list) in byDay)
        {
            // Best first; OrderBy is stable, so reversing first puts the later entry before the earlier.
            var best = Enumerable.Reverse(list).OrderBy(e => e[WeatherEntry.Forecast] == true).ThenBy(e => Rank(e[WeatherEntry.Source], sources)).ThenBy(e => e[WeatherEntry.Source] ?? "", StringComparer.Ordinal).ToList();
            record.days[date] = Merged(date, best);
            if (best[0][WeatherEntry.Forecast] != true && (record.LastRecorded is not { } last || date > last)) record.LastRecorded = date;
        }
        return record;
    }

    private static int Rank(string? source, IReadOnlyList<string>? sources)
    {
        if (source is null) return -1;
        for (var i = 0; i < (sources?.Count ?? 0); i++)
        {
            if (sources![i] == source) return i;
        }
        return int.MaxValue;
    }

    private static DayWeather Merged(DateOnly date, List<Entry> best)
    {
        double? First(Field<double> field) => best.Select(e => e[field]).FirstOrDefault(v => v is not null);
        var wind = best.FirstOrDefault(e => e[WeatherEntry.WindMs] is not null);
        // Least and greatest belong together: those of two stations may cross.
        var pair = best.FirstOrDefault(e => e[WeatherEntry.TMinC] is not null && e[WeatherEntry.TMaxC] is not null);
        var warmth = pair ?? best.FirstOrDefault(e => e[WeatherEntry.TMinC] is not null || e[WeatherEntry.TMaxC] is not null || e[WeatherEntry.TMeanC] is not null);
        return new(date)
        {
            TMinC = pair?[WeatherEntry.TMinC] ?? First(WeatherEntry.TMinC),
            TMaxC = pair?[WeatherEntry.TMaxC] ?? First(WeatherEntry.TMaxC),
            TMeanC = pair is null ? First(WeatherEntry.TMeanC) : pair[WeatherEntry.TMeanC],
            RhPct = First(WeatherEntry.RhPct),
            RhMinPct = First(WeatherEntry.RhMinPct),
            RhMaxPct = First(WeatherEntry.RhMaxPct),
            DewC = First(WeatherEntry.DewC),
            RainMm = First(WeatherEntry.RainMm),
            WindMs = wind?[WeatherEntry.WindMs],
            WindHeightM = wind?[WeatherEntry.WindHeightM] ?? 2,
            SunH = First(WeatherEntry.SunH),
            RadMjM2 = First(WeatherEntry.RadMjM2),
            Forecast = (warmth ?? best[0])[WeatherEntry.Forecast] == true,
        };
    }
}
