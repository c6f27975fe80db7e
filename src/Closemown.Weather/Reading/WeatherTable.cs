using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Closemown.Entries;

namespace Closemown.Weather;

/// <summary>Days read so far, with what was dropped and why. A day is twelve numbers with their lines: a file of 150 years takes some ten megabytes.</summary>
public sealed class WeatherTable
{
    /// <summary>The remark about a file that seems to be a morning reader's.</summary>
    internal const string MorningNote = "Read in the morning, as it seems: then the greatest temperature and the rain under a date are of the day before, and --day-before moves them there.";

    private static readonly DateTimeOffset Earliest = new(1900, 1, 1, 12, 0, 0, TimeSpan.Zero);
    private readonly SortedDictionary<DateOnly, DayRow> days = [];
    private readonly HashSet<DateOnly> clashing = [], bare = [];
    private readonly SortedDictionary<string, (int Count, long FirstLine)> dropped = new(StringComparer.Ordinal);
    private readonly SortedDictionary<(WeatherField Field, bool CanBe), LeftOut> leftOut = [];

    /// <summary>Days with any value.</summary>
    public int Count => days.Count - bare.Count;

    /// <summary>The first and last day; null where there is none.</summary>
    public (DateOnly First, DateOnly Last)? Span => Count == 0 ? null : (Kept.First(), Kept.Last());

    /// <summary>What was dropped while reading, by reason: how often, and the first line.</summary>
    public IReadOnlyDictionary<string, (int Count, long FirstLine)> Dropped => dropped;

    /// <summary>Values that were read but are not taken, since they are not plausible or cannot be; known once the entries were made.</summary>
    public IReadOnlyCollection<LeftOut> LeftOut => leftOut.Values;

    /// <summary>Traces of rain, too little to measure: they count as no rain.</summary>
    public int Traces { get; internal set; }

    /// <summary>Remarks about the file.</summary>
    public IList<string> Notes { get; } = [];

    /// <summary>Fields that any day has.</summary>
    public IEnumerable<string> Fields => Enumerable.Range(0, WeatherFields.Count).Where(f => days.Values.Any(d => !double.IsNaN(d.Values[f]))).Select(f => WeatherFields.All[f]);

    /// <summary>Days of which something is left.</summary>
    private IEnumerable<DateOnly> Kept => days.Keys.Where(d => !bare.Contains(d));

    /// <summary>Days that came again with another value.</summary>
    internal int Clashes => clashing.Count;

    /// <summary>Days between the first and the last that the file does not have, as stretches.</summary>
    public IEnumerable<(DateOnly From, DateOnly To)> Gaps()
    {
        DateOnly? before = null;
        foreach (var day in Kept)
        {
            if (before is { } b && day > b.AddDays(1)) yield return (b.AddDays(1), day.AddDays(-1));
            before = day;
        }
    }

    /// <summary>The same for a reader who comes in the morning and writes what the instruments show under that day.</summary>
    /// <remarks>The night's values (least temperature, greatest humidity) are of the day of reading; the day's warmth and what was summed since the morning before are of the day before. Common practice, no source.</remarks>
    public WeatherTable ReadInTheMorning()
    {
        var moved = new WeatherTable { Traces = Traces };
        foreach (var (reason, d) in dropped) moved.dropped[reason] = d;
        foreach (var note in Notes.Where(n => n != MorningNote)) moved.Notes.Add(note);
        foreach (var (date, day) in days)
        {
            for (var f = 0; f < WeatherFields.Count; f++)
            {
                if (!double.IsNaN(day.Values[f])) moved.Set((WeatherField)f is WeatherField.TMinC or WeatherField.RhMaxPct ? date : date.AddDays(-1), (WeatherField)f, day.Values[f], day.Lines[f]);
            }
        }
        return moved;
    }

    /// <summary>Puts a value in; the first one for a field of a day stays.</summary>
    internal void Set(DateOnly date, WeatherField field, double value, long line)
    {
        if (!days.TryGetValue(date, out var day)) days[date] = day = new();
        var f = (int)field;
        if (double.IsNaN(day.Values[f])) (day.Values[f], day.Lines[f]) = (value, (int)line);
        else if (day.Values[f] != value)
        {
            clashing.Add(date);
            Drop("the day was there already with another value", line);
        }
    }

    internal void Drop(string reason, long line) => dropped[reason] = dropped.TryGetValue(reason, out var d) ? (d.Count + 1, d.FirstLine) : (1, line);

    /// <summary>The days as entries of kind <c>weather</c>, in order; a value that is not plausible or cannot be is left out and told in <see cref="LeftOut"/>.</summary>
    /// <param name="area">The area.</param>
    /// <param name="source">Where they come from.</param>
    /// <param name="forecastFrom">The first day that is a forecast; null for none.</param>
    /// <param name="at">The instant that stands for a civil day.</param>
    /// <param name="confirmed">Whether implausible values are meant.</param>
    public IEnumerable<Entry> Entries(string area, string source, DateOnly? forecastFrom, Func<DateOnly, DateTimeOffset> at, bool confirmed = false)
    {
        ArgumentNullException.ThrowIfNull(at);
        leftOut.Clear();
        bare.Clear();
        foreach (var (date, day) in days)
        {
            // An entry's time begins with the year 1900; of older weather only the day counts.
            var instant = at(date);
            if (instant < Earliest) instant = Earliest;
            if (Entry(area, source, forecastFrom is { } f && date >= f, date, instant, day, confirmed) is { } entry) yield return entry;
            else bare.Add(date);
        }
    }

    private Entry? Entry(string area, string source, bool forecast, DateOnly date, DateTimeOffset at, DayRow day, bool confirmed)
    {
        var values = (double[])day.Values.Clone();
        while (true)
        {
            var body = Body(area, source, forecast, date, at, values);
            if (body is null) return null;
            var context = new EntryContext { AsksPlausible = !confirmed };
            var faults = EntryReader.Read(body, context, out var entry);
            if (entry is not null) return entry;
            // One value that cannot be takes none of the others with it.
            if (faults.FirstOrDefault(f => WeatherFields.Find(f.Field) is not null) is not { } fault) throw new WeatherException(faults[0].Message, faults[0].Remedy);
            var field = WeatherFields.Find(fault.Field)!.Value;
            var key = (field, fault.Code == FaultCodes.Implausible);
            if (!leftOut.TryGetValue(key, out var told)) leftOut[key] = told = new(WeatherFields.Name(field), WeatherFields.Unit(field), key.Item2);
            told.Add(date, values[(int)field], day.Lines[(int)field]);
            values[(int)field] = double.NaN;
            // A wind's height without its wind says nothing.
            if (field == WeatherField.WindMs) values[(int)WeatherField.WindHeightM] = double.NaN;
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

    /// <summary>A day's values by field, not a number where there is none, and the lines they stood in.</summary>
    private sealed class DayRow
    {
        public DayRow() => Array.Fill(Values, double.NaN);

        public double[] Values { get; } = new double[WeatherFields.Count];

        public int[] Lines { get; } = new int[WeatherFields.Count];
    }
}
