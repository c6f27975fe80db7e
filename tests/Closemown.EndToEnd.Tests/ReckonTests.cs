using System.Text.Json.Nodes;
using Xunit;

namespace Closemown.EndToEnd.Tests;

public sealed class ReckonTests
{
    private static readonly JsonArray Rows = JsonNode.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Checks", "mechanics", "reckon.json")))!["rows"]!.AsArray();

    public static TheoryData<string> Ids => [.. Rows.Select(r => r!["id"]!.GetValue<string>())];

    [Theory]
    [MemberData(nameof(Ids))]
    public void A_reckoning_gives_the_published_value(string id)
    {
        var row = Rows.First(r => r!["id"]!.GetValue<string>() == id)!;
        using var bench = new Bench();
        var ran = bench.Run(["reckon", row["name"]!.GetValue<string>(), .. row["typed"]!.AsArray().Select(t => t!.GetValue<string>()), "--json"]);
        var expected = row["value"]!.GetValue<double>();
        Assert.InRange(ran.Json["value"]!.GetValue<double>(), expected * (1 - row["relative"]!.GetValue<double>()), expected * (1 + row["relative"]!.GetValue<double>()));
        Assert.Equal(row["unit"]!.GetValue<string>(), ran.Json["unit"]!.GetValue<string>());
        Assert.Equal(row["source"]!.GetValue<string>(), ran.Json["source"]!.GetValue<string>());
    }

    [Fact]
    public void The_list_gives_formula_range_and_source_and_clip_both_ways_of_saying_it()
    {
        using var bench = new Bench();
        var list = bench.Run("reckon").Out;
        Assert.All((string[])["clip = speed / (blades × rpm)", "definition of feed per cutting edge", "screw kinematics", "above 0"], s => Assert.Contains(s, list, StringComparison.Ordinal));
        Assert.StartsWith("3.636 mm, 275 cuts per metre", bench.Run("reckon", "clip", "speed=4.8km/h", "blades=11", "rpm=2000").Out, StringComparison.Ordinal);
        Assert.Equal(1, bench.Run("reckon", "click", "pitch=1mm", "detents=0").Exit);
    }

    private static readonly string[] Rollers = ["rollerFront=60mm", "rollerRear=60mm", "rollerSpan=200mm", "edgeAt=100,-26"];

    // Worked by hand in BenchFromScrews.Heights: one turn left gives 4.570 and 4.056 mm.
    [Fact]
    public void Screws_and_bench_heights_are_reckoned_both_ways()
    {
        using var bench = new Bench();
        var heights = bench.Run(["reckon", "bench", .. Rollers, "leftTurns=1", "--json"]).Json;
        Assert.Equal((4.570, 4.056), (Math.Round((double)heights["left"]!, 3), Math.Round((double)heights["right"]!, 3)));
        Assert.StartsWith("left 4.57, right 4.056 mm", bench.Run(["reckon", "bench", .. Rollers, "leftTurns=1"]).Out, StringComparison.Ordinal);
        var turns = bench.Run(["reckon", "screws", .. Rollers, $"leftMm={heights["left"]}", $"rightMm={heights["right"]}", "--json"]).Json;
        Assert.Equal((1.0, 0.0), (Math.Round((double)turns["left"]!, 6), Math.Round((double)turns["right"]!, 6) + 0.0));
        // A lever halves what arrives at the bracket, so it takes twice the turns.
        Assert.Equal(2.0, (double)bench.Run(["reckon", "screws", .. Rollers, "screwLever=0.5", $"leftMm={heights["left"]}", $"rightMm={heights["right"]}", "--json"]).Json["left"]!, 1e-6);
        Assert.Contains("cannot give 400 mm", bench.Run(["reckon", "screws", .. Rollers, "left=400"]).Error, StringComparison.Ordinal);
        Assert.Contains("rollerRearMm", bench.Run("reckon", "bench", "rollerFront=60").Error, StringComparison.Ordinal);
    }
}
