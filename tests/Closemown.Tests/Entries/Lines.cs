using System.Globalization;
using System.Text.Json.Nodes;
using Closemown.Entries;
using Xunit;

namespace Closemown.Tests.Entries;

/// <summary>Lines and entries for tests.</summary>
internal static class Lines
{
    public static DateTimeOffset Start { get; } = new(2026, 5, 1, 8, 0, 0, TimeSpan.Zero);

    public static Guid Id(int n) => EntryIds.Make(Start, 0, (ulong)n);

    /// <summary>A line with its envelope: id n, n minutes after the start, unit "cylinder" and area "green".</summary>
    public static string Whole(string body, int n, int minute)
    {
        var o = JsonNode.Parse(body)!.AsObject();
        if (!o.ContainsKey("v")) o.Insert(0, "v", 1);
        if (!o.ContainsKey("id")) o.Insert(1, "id", Id(n).ToString("D"));
        if (!o.ContainsKey("at")) o.Insert(2, "at", EntryTime.Write(Start.AddMinutes(minute)));
        var kind = Kinds.Find((string?)o["kind"] ?? "");
        if (!o.ContainsKey("unit") && kind?.Belongs is Belongs.Unit or Belongs.UnitAndArea) o["unit"] = "cylinder";
        if (!o.ContainsKey("area") && kind?.Belongs is Belongs.Area) o["area"] = "green";
        return o.ToJsonString();
    }

    public static string Whole(string body, int n) => Whole(body, n, n);

    public static Entry Entry(string body, int n) => Read(Whole(body, n, n));

    public static Entry Entry(string body, int n, int minute) => Read(Whole(body, n, minute));

    public static Entry Read(string line)
    {
        var faults = EntryReader.Read(line, EntryContext.Whole, out var entry);
        Assert.Empty(faults);
        return entry!;
    }

    /// <summary>n turns of the adjusters, a minute apart, from id 1.</summary>
    public static Entry[] Clicks(int n) => [.. Enumerable.Range(1, n).Select(i => Entry($$"""{"kind":"clicks","left":{{(i % 9) + 1}},"note":"turn {{i}} – fein"}""", i))];

    /// <summary>One line of every kind, ids from 1.</summary>
    public static string[] EveryKind() => [.. Kinds.All.Select((k, i) => Whole(k.Example, i + 1))];

    public static Entry Void(int target, int n, int minute) => Entry($$"""{"kind":"void","voids":"{{Id(target):D}}"}""", n, minute);

    public static Entry Forecast(int n, double tMaxC, string date = "2026-05-03", string more = "") =>
        Entry(string.Create(CultureInfo.InvariantCulture, $$"""{"kind":"weather","date":"{{date}}","tMaxC":{{tMaxC}},"source":"forecaster","forecast":true{{more}}}"""), n);
}
