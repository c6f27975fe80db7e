using System.Globalization;
using System.Text.Json;
using Closemown.Entries;
using Closemown.Turf;

namespace Closemown.Tests.Turf;

/// <summary>Entries of an area called "green", written as JSON bodies with their day and hour.</summary>
internal sealed class AreaBook
{
    public const string Area = "green";
    public static readonly DateOnly Start = new(2026, 4, 1);
    private readonly List<Entry> entries = [];
    private readonly List<Entry> weather = [];
    private int made;

    /// <summary>A day counted from the start.</summary>
    public static DateOnly Day(int day) => Start.AddDays(day);

    public static DateTimeOffset At(int day, double hour = 12) => new(Start.AddDays(day).ToDateTime(TimeOnly.MinValue).AddHours(hour), TimeSpan.Zero);

    /// <summary>Adds an entry: fields of its JSON body without id, time and area.</summary>
    public AreaBook Add(int day, double hour, string fields)
    {
        entries.Add(Read(At(day, hour), "{" + fields + "}"));
        return this;
    }

    /// <summary>Steady weather over days.</summary>
    public AreaBook Weather(int from, int to, double tMin, double tMax, double rain = 2)
    {
        for (var d = from; d <= to; d++)
            weather.Add(Read(At(d, 23), string.Create(CultureInfo.InvariantCulture, $$"""{"kind":"weather","date":"{{Day(d):yyyy-MM-dd}}","tMinC":{{tMin}},"tMaxC":{{tMax}},"rainMm":{{rain}}}""")));
        return this;
    }

    public IReadOnlyList<Entry> Entries => entries;

    public WeatherRecord Record => WeatherRecord.Of(Area, weather);

    /// <summary>The track, with every mowing at the cut it tells.</summary>
    public AreaTrack Track()
    {
        var area = TurfArea.Of(Area, entries.Where(e => e.Is(AreaEntry.Kind)));
        var track = new AreaTrack(area, new TurfDays(area, Record, [], Start));
        foreach (var e in entries) Odd = track.Add(e, e[MowEntry.CutMm] is { } cut ? new CutHeight(cut, 0.3) : null);
        return track;
    }

    /// <summary>How odd the last entry was.</summary>
    public double? Odd { get; private set; }

    private Entry Read(DateTimeOffset at, string body)
    {
        made++;
        var context = new EntryContext { NewId = t => Guid.CreateVersion7(t), Now = () => at, OnlyArea = () => Area, OnlyUnit = () => "mower" };
        using var json = JsonDocument.Parse(body);
        var faults = EntryReader.Read(json.RootElement, context, out var entry);
        return entry ?? throw new InvalidOperationException(faults[0].Message);
    }
}
