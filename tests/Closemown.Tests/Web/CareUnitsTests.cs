using System.Net;
using System.Text.Json.Nodes;
using Closemown.Book;
using Xunit;

namespace Closemown.Tests.Web;

/// <summary>The forms of turf care ask in the visitor's units, and take a bare number in the unit that they asked for.</summary>
public sealed class CareUnitsTests
{
    private static readonly (string, string)[] American = [("words", "us"), ("gap", "thou"), ("height", "fraction"), ("decimal", "point"), ("theme", "light"), ("stand", "behind"), ("back", "/look")];
    private static readonly (string, string)[] Metric = [("words", "uk"), ("gap", "hundredth"), ("height", "mm"), ("decimal", "point"), ("theme", "light"), ("stand", "behind"), ("back", "/look")];

    // An inch is 25.4 mm, a pound 453.59237 g, a foot 0.3048 m: exact by the agreement of 1959.
    private static readonly (string Kind, string Field, string American, double AmericanMeans, string Metric, (string, string)[] With)[] Asked =
    [
        ("water", "mm", "in", 25.4, "mm", []),
        ("feed", "nGm2", "lb/1000 sq ft", 453.59237 / 92.90304, "g/m²", []),
        ("work", "kgM2", "lb/sq ft", 0.45359237 / 0.09290304, "kg/m²", [("what", "topdress")]),
        ("work", "depthMm", "in", 25.4, "mm", [("what", "aerate")]),
        ("pace", "up", "ft", 0.3048, "m", []),
        ("weather", "rainMm", "in", 25.4, "mm", [("date", "2026-06-30")]),
        ("weather", "tMinC", "°F", 1 / 1.8, "°C", [("date", "2026-06-29")]),
        ("clippings", "litres", "cu ft", 28.316846592, "litres", []),
        ("clippings", "areaM2", "sq ft", 0.09290304, "m²", [("litres", "3")]),
    ];

    [Fact]
    public async Task A_bare_number_is_taken_in_the_unit_that_the_form_asks_for()
    {
        await using var bench = await ServerBench.Start(entries: Lines.All);
        foreach (var (look, american) in new[] { (American, true), (Metric, false) })
        {
            using var visitor = new Visitor(bench);
            using (await visitor.Send("/look", false, look)) { }
            var page = WebUtility.HtmlDecode(await visitor.Page("/turf"));
            foreach (var (kind, field, us, means, metric, with) in Asked)
            {
                var unit = american ? us : metric;
                Assert.Contains($"name=\"{field}.in\" value=\"{unit}\"", page, StringComparison.Ordinal);
                var answer = await visitor.Enter([("kind", kind), ("area", "green"), (field, "3"), ($"{field}.in", unit), ("confirm", field), .. with]);
                Assert.True((bool)answer["ok"]!, $"{kind} {field} {unit}: {answer.ToJsonString()}");
                Assert.Equal(!american ? 3 : field == "tMinC" ? (3 - 32) / 1.8 : 3 * means, Last(bench, kind, field), 5e-3 * Math.Max(1, Math.Abs(means)));
            }
            if (american) Assert.DoesNotContain("kg/m²", page, StringComparison.Ordinal);
            else Assert.DoesNotContain("sq ft", page, StringComparison.Ordinal);
        }
    }

    private static double Last(ServerBench bench, string kind, string field)
    {
        using var book = BookFile.Open(bench.Book, new BookOptions { ReadOnly = true });
        var last = kind == "weather" ? book.ReadWeatherKept()[^1] : book.ReadAll()[^1].Entry;
        Assert.Equal(kind, last.Kind.Name);
        return (double)JsonNode.Parse(last.Json)![field]!;
    }
}
