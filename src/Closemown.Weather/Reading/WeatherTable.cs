using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Closemown.Entries;

namespace Closemown.Weather;

/// <summary>Days read so far, with what was dropped and why. A day is twelve numbers: a file of 150 years takes some ten megabytes.</summary>
public sealed class WeatherTable
{
    private static readonly DateTimeOffset Earliest = new(1900, 1, 1, 12, 0, 0, TimeSpan.Zero);
    private readonly SortedDictionary<DateOnly, double[]> days = [];
    private readonly SortedDictionary<string, (int Count, long FirstLine)> dropped = new(StringComparer.Ordinal);

    /// <summary>Days with any value.</summary>
    public int Count => days.Count;

    /// <summary>The first and last day; null where there is none.</summary>
    public (DateOnly First, DateOnly Last)? Span => days.Count == 0 ? null : (days.Keys.First(), days.Keys.Last());

    /// <summary>What was dropped, by reason: how often, and the first line.</summary>
    public IReadOnlyDictionary<string, (int Count, long FirstLine)> Dropped => dropped;

    /// <summary>Remarks about the file.</summary>
    public IList<string> Notes { get; } = [];

    /// <summary>Fields that any day has.</summary>
    public IEnumerable<string> Fields => Enumerable.Range(0, WeatherFields.Count).Where(f => days.Values.Any(d => !double.IsNaN(d[f]))).Select(f => WeatherFields.All[f]);

    /// <summary>Days between the first and the last that the file does not have, as stretches.</summary>
    public IEnumerable<(DateOnly From, DateOnly To)> Gaps()
    {
        DateOnly? before = null;
        foreach (var day in days.Keys)
        {
            if (before is { } b && day > b.AddDays(1)) yield return (b.AddDays(1), day.AddDays(-1));
            before = day;
        }
    }

    /// <summary>Puts a value in; the first one for a field of a day stays.</summary>
    internal void Set(DateOnly date, WeatherField field, double value, long line)
    {
        if (!days.TryGetValue(date, out var day))
        {
            days[date] = day = new double[WeatherFields.Count];
            Array.Fill(day, double.NaN);
        }
        if (double.IsNaN(day[(int)field])) day[(int)field] = value;
        else if (day[(int)field] != value) Drop("the day was there already with another value", line);
    }

    internal void Drop(string reason, long line) => dropped[reason] = dropped.TryGetValue(reason, out var d) ? (d.Count + 1, d.FirstLine) : (1, line);

    /// <summary>The days as entries of kind <c>weather</c>, in order; a value that cannot be is dropped.</summary>
    /// <param name="area">The area.</param>
    /// <param name="source">Where they come from.</param>
    /// <param name="forecastFrom">The first day that is a forecast; null for none.</param>
    /// <param name="at">The instant that stands for a civil day.</param>
    /// <param name="shiftDays">Days to move every date by: −1 for a reader who writes yesterday's weather under today's date.</param>
    /// <param name="confirmed">Whether implausible values are meant.</param>
    public IEnumerable<Entry> Entries(string area, string source, DateOnly? forecastFrom, Func<DateOnly, DateTimeOffset> at, int shiftDays = 0, bool confirmed = false)
    {
        ArgumentNullException.ThrowIfNull(at);
        foreach (var (read, values) in days)
        {
            var date = read.AddDays(shiftDays);
            // An entry's time begins with the year 1900; of older weather only the day counts.
            var instant = at(date);
            if (instant < Earliest) instant = Earliest;
            if (Entry(area, source, forecastFrom is { } f && date >= f, date, instant, values, confirmed) is { } entry) yield return entry;
        }
    }

    private Entry? Entry(string area, string source, bool forecast, DateOnly date, DateTimeOffset at, double[] values, bool confirmed)
    {
        while (true)
        {
            var body = Body(area, source, forecast, date, at, values);
            if (body is null) return null;
            var context = new EntryContext { AsksPlausible = !confirmed };
            var faults = EntryReader.Read(body, context, out var entry);
            if (entry is not null) return entry;
            // One value that cannot be takes none of the others with it.
            if (faults.Select(f => WeatherFields.Find(f.Field)).FirstOrDefault(f => f is not null) is not { } field) throw new WeatherException(faults[0].Message, faults[0].Remedy);
            Drop(faults[0].Code == FaultCodes.Implausible ? $"{WeatherFields.Name(field)}: not plausible ({values[(int)field].ToString("0.##", CultureInfo.InvariantCulture)}); --confirmed takes such values" : $"{WeatherFields.Name(field)}: cannot be", 0);
            values[(int)field] = double.NaN;
        }
    }

    private static string? Body(string area, string source, bool forecast, DateOnly date, DateTimeOffset at, double[] values)
    {
        var fields = new StringBuilder();
        for (var f = 0; f < WeatherFields.Count; f++)
        {
            if (!double.IsNaN(values[f])) fields.Append(CultureInfo.InvariantCulture, $",\"{WeatherFields.All[f]}\":{Math.Round(values[f], 4)}");
        }
        if (fields.Length == 0) return null;
        var about = $"\"area\":{Quoted(area)},\"date\":\"{date:yyyy-MM-dd}\"{fields},\"source\":{Quoted(source)}{(forecast ? ",\"forecast\":true" : "")}";
        return $"{{\"v\":1,\"id\":\"{IdOf(at, about):D}\",\"at\":\"{at:yyyy-MM-ddTHH:mm:sszzz}\",\"kind\":\"weather\",{about}}}";
    }

    /// <summary>An id that follows from the day and what is said of it, so that a file read twice is read once: UUID version 7 of the day's instant.</summary>
    private static Guid IdOf(DateTimeOffset at, string about)
    {
        Span<byte> id = stackalloc byte[16];
        SHA256.HashData(Encoding.UTF8.GetBytes(about)).AsSpan(0, 16).CopyTo(id);
        var ms = Math.Max(0, at.ToUnixTimeMilliseconds());
        for (var i = 0; i < 6; i++) id[i] = (byte)((ms >> (40 - (8 * i))) & 0xFF);
        id[6] = (byte)((id[6] & 0x0F) | 0x70);
        id[8] = (byte)((id[8] & 0x3F) | 0x80);
        return new Guid(id, bigEndian: true);
    }

    private static string Quoted(string text) => System.Text.Json.JsonSerializer.Serialize(text);
}
