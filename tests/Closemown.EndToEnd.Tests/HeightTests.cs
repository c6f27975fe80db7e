using System.Globalization;
using System.Text.Json.Nodes;
using Xunit;

namespace Closemown.EndToEnd.Tests;

/// <summary>The height through the real command: entered as people type it, led to a setting, and told.</summary>
public sealed class HeightTests
{
    private static Bench Read(params string[][] more)
    {
        var bench = new Bench();
        bench.Run("new", "--unit", "mower", "widthMm=510", "lipMm=2.2", "benchRangeMm=3,12");
        foreach (var typed in (string[][])[["gauge", "6.1", "6.3"], .. more])
        {
            var ran = bench.Run(["add", .. typed]);
            Assert.True(ran.Exit == 0, ran.Error);
        }
        return bench;
    }

    [Fact]
    public void Turns_readings_and_spots_are_typed_as_they_are_said()
    {
        using var bench = Read(["screw", "left", "+0.25"], ["screw", "left", "-1/4", "right", "1/8 turn"], ["screw", "both", "0.5"], ["locked"],
            ["canopy", "5mm", "--how", "ruler", "--when", "after", "--area", "green"], ["canopy", "5", "5.5", "5", "--when=after", "--area", "green"], ["canopy", "5..6", "after", "--area", "green"]);
        var entries = bench.Run("book", "export").Out.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => JsonNode.Parse(l)!.AsObject()).ToList();
        JsonObject[] Of(string kind) => [.. entries.Where(e => (string)e["kind"]! == kind)];
        Assert.Equal((6.1, 6.3), ((double)Of("gauge")[0]["leftMm"]!, (double)Of("gauge")[0]["rightMm"]!));
        Assert.Equal([(0.25, null), (-0.25, 0.125), (0.5, 0.5)], Of("screw").Select(e => ((double?)e["leftTurns"], (double?)e["rightTurns"])));
        var canopies = Of("canopy");
        Assert.Equal((5, "ruler", "after"), ((double)canopies[0]["mm"]!, (string)canopies[0]["how"]!, (string)canopies[0]["when"]!));
        Assert.Equal([5, 5.5, 5], canopies[1]["mm"]!.AsArray().Select(n => (double)n!));
        Assert.Equal((5, 6), ((double)canopies[2]["lowMm"]!, (double)canopies[2]["highMm"]!));
    }

    [Theory]
    [InlineData("add screw left", 1, "has no value")]
    [InlineData("add screw 0.2 left", 1, "which side")]
    [InlineData("add canopy 5 --hwo ruler --when after", 2, "Did you mean --how?")]
    [InlineData("add canopy 5 --how", 2, "needs a value")]
    [InlineData("add canopy 5..6 7 after", 1, "do not go together")]
    [InlineData("next --bench 20mm", 1, "reach 3 to 12 mm")]
    [InlineData("next --bench high", 1, "--bench")]
    [InlineData("next --bench 6mm --cut 4mm", 1, "Leave one out")]
    [InlineData("next --sure 80", 2, "--bench 6mm")]
    [InlineData("next --bench 6mm --sure 100", 1, "0.5 to 0.999")]
    [InlineData("height --cut 4mm --area gren", 1, "Did you mean \"green\"?")]
    [InlineData("step-down --area green", 1, "--cut 4mm")]
    [InlineData("step-down --area green --cut 4mm --share lots", 1, "--share")]
    [InlineData("reckon bench rollerFrontMm=60", 1, "rollerRearMm")]
    [InlineData("reckon screws rollerFrontMm=60 rollerRearMm=60 rollerSpanMm=200 edgeAtMm=300,-26 leftMm=5", 1, "between the axes")]
    public void A_mistake_is_refused_with_what_to_do(string typed, int exit, string hint)
    {
        using var bench = Read(["area", "grass=cool", "--area", "green"]);
        var before = bench.Run("book", "export").Out;
        var ran = bench.Run(typed.Split(' '));
        Assert.Equal((exit, ""), (ran.Exit, ran.Out));
        Assert.Contains(hint, Flat(ran.Error), StringComparison.Ordinal);
        Assert.Equal(before, bench.Run("book", "export").Out);
    }

    [Fact]
    public void Next_leads_from_a_reading_to_a_turn_and_says_how_to_enter_it()
    {
        using var bench = Read();
        var next = Flat(bench.Run("next", "--bench", "6.6mm").Out);
        Assert.All((string[])["Do now:", "screw up", "How sure", "within the tolerance", "closemown add screw left="], part => Assert.Contains(part, next, StringComparison.Ordinal));
        var step = bench.Run("next", "--bench", "6.6mm", "--tol", "0.1mm", "--sure", "90", "--json").Json["next"]!;
        Assert.Equal("screw", (string)step["do"]!);
        Assert.True((double)step["leftTurns"]! > (double)step["rightTurns"]! && (double)step["rightTurns"]! > 0);
        var why = Flat(bench.Run("why", (string)step["advice"]!).Out);
        Assert.All((string[])["both-screws-together", "6.6 mm is wanted", "Tighten both height nuts"], part => Assert.Contains(part, why, StringComparison.Ordinal));
    }

    [Fact]
    public void Height_draws_tells_and_answers_for_a_wished_cut()
    {
        using var bench = Read(["mow", "1h", "--area", "green"], ["canopy", "5.4", "5.5", "5.3", "--when", "after", "--area", "green"]);
        var told = bench.Run("height", "--cut", "4mm", "--area", "green", "--draw").Out;
        Assert.All((string[])["From the side", "Bench height left and right", "wanted", "set the bench to", "What would teach most", "3 spots read after 1 mowing", "closemown next --cut 4.00mm --area green", "a stripe two passes"],
            part => Assert.Contains(part, Flat(told), StringComparison.Ordinal));
        Assert.All(told.Split('\n'), line => Assert.True(line.Length <= 80, line));
        var asked = bench.Run("height", "--cut", "4mm", "--json").Json["height"]!;
        Assert.Contains(((double)asked["setBenchMm"]!["mean"]!).ToString("F2", CultureInfo.InvariantCulture) + " mm", told, StringComparison.Ordinal);
        var inches = Flat(bench.Run("height", "--height", "inch").Out);
        Assert.Contains("in in left right", inches, StringComparison.Ordinal);
        Assert.Contains("The height: bench left", Flat(bench.Run("today").Out), StringComparison.Ordinal);
    }

    [Fact]
    public void Before_anything_was_read_it_says_so()
    {
        using var bench = new Bench();
        bench.Run("new", "--unit", "mower");
        Assert.Contains("was not read yet", Flat(bench.Run("height", "--draw").Out), StringComparison.Ordinal);
        Assert.Contains("Read the bench height", Flat(bench.Run("next", "--bench", "6mm").Out), StringComparison.Ordinal);
    }

    [Fact]
    public void Step_down_is_one_table()
    {
        using var bench = Read(["canopy", "8", "before", "--area", "green"]);
        var rows = bench.Run("step-down", "--area", "green", "--cut", "4mm", "--share", "1/3", "--json").Json["step-down"]!.AsArray();
        Assert.Equal([8, 5.6569], rows.Select(r => (double)r!["canopyMm"]!));
        var table = bench.Run("step-down", "--area", "green", "--cut", "4mm", "--share", "33%").Out;
        Assert.Contains("29 in 100", table, StringComparison.Ordinal);
        Assert.Contains("4.00", table, StringComparison.Ordinal);
    }

    [Fact]
    public void Screws_are_reckoned_from_heights_and_back()
    {
        using var bench = new Bench();
        string[] rollers = ["rollerFrontMm=60", "rollerRear=60mm", "rollerSpanMm=200", "edgeAtMm=100,-26"];
        var bench1 = bench.Run(["reckon", "bench", .. rollers, "leftTurns=1", "--json"]).Json;
        // The worked example of the model's own page: 4.570 and 4.056 mm.
        Assert.Equal(("bench", "mm"), ((string)bench1["name"]!, (string)bench1["unit"]!));
        Assert.Equal(4.570, (double)bench1["left"]!, 1e-3);
        Assert.Equal(4.056, (double)bench1["right"]!, 1e-3);
        Assert.Equal(((double)bench1["left"]! + (double)bench1["right"]!) / 2, (double)bench1["value"]!, 1e-9);
        string N(string side) => ((double)bench1[side]!).ToString("R", CultureInfo.InvariantCulture);
        var back = bench.Run(["reckon", "screws", .. rollers, $"leftMm={N("left")}", $"rightMm={N("right")}", "--json"]).Json;
        Assert.Equal(1, (double)back["left"]!, 1e-6);
        Assert.Equal(0, (double)back["right"]!, 1e-6);
        Assert.Contains("travel of the bracket over travel of the screw", Flat(bench.Run("reckon").Out), StringComparison.Ordinal);
    }

    private static string Flat(string text) => string.Join(' ', text.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
}
