using System.Text.Json.Nodes;
using Closemown.Entries;

namespace Closemown.Fuzzing;

/// <summary>Entries and questions that are taken.</summary>
public static class GoodLines
{
    private static readonly DateTimeOffset Start = new(2026, 5, 1, 8, 0, 0, TimeSpan.Zero);

    /// <summary>The example of every kind, as people write it: without envelope.</summary>
    public static IReadOnlyList<string> Entries { get; } =
    [
        .. Kinds.All.Select(k => k.Example),
        """{"kind":"unit","unit":"mower","clickUm":19,"priors":{"bowUm":[0,5]},"adjusterAtMm":[-200,200],"relief":true}""",
        """{"kind":"canopy","area":"turf","mm":6.5,"when":"after","how":"ruler","typed":{"mm":"6.5"},"at":"2026-05-01T08:00:00+01:00","by":"a","note":"b"}""",
        """{"kind":"weather","area":"turf","date":"2026-05-02","tMinC":4,"tMaxC":99,"forecast":true,"source":"x","confirmed":["tMaxC"],"more":{"a":[1,null]}}""",
        """{"kind":"feeler","centre":{"goUm":30},"state":"just-run","id":"019de28d-3c00-7000-8000-00000000ffff"}""",
    ];

    /// <summary>The same with all that a stored entry has.</summary>
    public static IReadOnlyList<string> Whole { get; } = [.. Entries.Select((body, n) => WithEnvelope(body, n + 1))];

    /// <summary>Every question.</summary>
    public static IReadOnlyList<string> Questions { get; } =
    [
        """{"ask":"next"}""",
        """{"ask":"next","unit":"mower","ahead":true,"atBench":true,"priceOfMinute":2}""",
        """{"ask":"next","unit":"mower","aim":{"benchMm":6.0,"tolMm":0.05,"probability":0.85}}""",
        """{"ask":"next","unit":"mower","aim":{"cutMm":4.5,"area":"turf"}}""",
        """{"ask":"steel","unit":"mower"}""",
        """{"ask":"steel-history","unit":"mower","last":5}""",
        """{"ask":"height","unit":"mower","area":"turf","benchMm":5,"cutMm":4,"wet":false}""",
        """{"ask":"step-down","area":"turf","cutMm":4,"share":0.33,"canopyMm":9,"growthMm":1}""",
        """{"ask":"turf","area":"turf","date":"2026-05-03"}""",
        """{"ask":"plan","area":"turf","from":"2026-05-03","days":3,"off":["2026-05-04"]}""",
        """{"ask":"canopy","area":"turf","back":3,"ahead":2}""",
        """{"ask":"sink","unit":"mower","area":"turf"}""",
        """{"ask":"places"}""",
        """{"ask":"today"}""",
        """{"ask":"score"}""",
        """{"ask":"why","id":"next-0-0-NjM5MTMzOTIwMDAwMDAwMDAwCjAKMQptb3dlcg"}""",
    ];

    private static string WithEnvelope(string body, int n)
    {
        var line = JsonNode.Parse(body)!.AsObject();
        var kind = Kinds.Get((string)line["kind"]!);
        line["v"] = 1;
        line["id"] ??= EntryIds.Make(Start, 0, (ulong)n).ToString("D");
        line["at"] ??= EntryTime.Write(Start.AddMinutes(n));
        if (kind.Belongs is Belongs.Unit or Belongs.UnitAndArea) line["unit"] ??= "mower";
        if (kind.Belongs is Belongs.Area) line["area"] ??= "turf";
        return line.ToJsonString();
    }
}
