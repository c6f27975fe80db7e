using System.Text.Json.Nodes;
using Xunit;

namespace Closemown.EndToEnd.Tests;

/// <summary>The commands about the height: height, step-down, next on the way to a height.</summary>
public sealed class HeightCommandTests
{
    [Fact]
    public void The_height_is_told_with_table_cut_and_drawings_in_the_units_asked_for()
    {
        using var bench = Mown();
        var told = bench.Run("height", "--draw", "--cut", "4mm", "--area", "green").Out;
        Assert.All((string[])["For a cut of 4.00 mm on green", "What would teach most", "From the side", "seen from behind", "wanted", "bench, as gauged tight", "a turn of the screw", "As it stands it cuts"], n => Assert.Contains(n, told, StringComparison.Ordinal));
        Assert.All(told.Split('\n'), line => Assert.InRange(line.Length, 0, 80));
        Assert.DoesNotContain('\u001b', told);
        Assert.DoesNotContain("From the side", bench.Run("height").Out, StringComparison.Ordinal);
        Assert.Contains("in in ", bench.Run("height", "--height", "inch").Out, StringComparison.Ordinal);

        var json = bench.Run("height", "--json").Json["height"]!;
        Assert.InRange((double)json["benchMm"]!["left"]!["mean"]!, 4.95, 5.05);
        Assert.Equal((2, 3, 1), ((int)json["readings"]!["gauge"]!, (int)json["readings"]!["canopy"]!, (int)json["readings"]!["mowings"]!));
        var wet = bench.Run("height", "--wet", "--json").Json["height"]!;
        Assert.True((double)wet["cutMm"]!["mean"]! < (double)json["cutMm"]!["mean"]!);
        Assert.Null(json["setBenchMm"]);
    }

    [Fact]
    public void The_way_down_never_takes_more_than_the_share()
    {
        using var bench = Mown();
        bench.Run("add", "canopy", "9", "--when", "before", "--how", "ruler", "--area", "green");
        var steps = bench.Run("step-down", "--area", "green", "--cut", "4mm", "--canopy", "9mm", "--share", "1/3", "--json").Json["step-down"]!.AsArray();
        Assert.All(steps, s => Assert.InRange((double)s!["shareRemoved"]!, 0.01, (1 / 3.0) + 1e-9));
        Assert.Equal((9, 4), ((double)steps[0]!["canopyMm"]!, Math.Round((double)steps[^1]!["cutMm"]!, 9)));
        Assert.Equal(steps.Count, bench.Run("step-down", "--area", "green", "--cut", "4mm", "--canopy", "9mm").Lines.Count(l => l.EndsWith("in 100", StringComparison.Ordinal)));
        Assert.Contains("Add --cut 4mm", bench.Run("step-down", "--area", "green").Error, StringComparison.Ordinal);
    }

    [Fact]
    public void The_next_step_to_a_height_can_be_typed_as_it_is_shown_and_leads_on()
    {
        using var bench = Mown();
        var told = bench.Run("next", "--bench", "9mm");
        Assert.Equal(0, told.Exit);
        Assert.Contains("Do now", told.Out, StringComparison.Ordinal);
        var line = told.Lines.Single(l => l.StartsWith("Enter it", StringComparison.Ordinal));
        Assert.Equal(0, bench.Run([.. line[(line.IndexOf("closemown ", StringComparison.Ordinal) + 10)..].Split(' ')]).Exit);
        Assert.NotEqual(told.Out, bench.Run("next", "--bench", "9mm").Out);
    }

    [Theory]
    [InlineData("height --area gren", 1, "Did you mean \"green\"?")]
    [InlineData("height --cut 4miles", 1, "not known")]
    [InlineData("next --bench 6mm --sure 120", 1, "0.5 to 0.999")]
    [InlineData("next --bench 6mm --sure often", 1, "--sure 85")]
    [InlineData("next --tol 0.05mm", 2, "--bench 6mm")]
    [InlineData("step-down --area green --cut 4mm --share 2", 1, "0.01 to 0.95")]
    [InlineData("add screw left 2 flats", 1, "1/4 turn")]
    [InlineData("add screw up 1", 1, "screw left +0.25")]
    [InlineData("add gauge left 5.6 right", 1, "has no value")]
    [InlineData("add canopy 5 --wen after --area green", 2, "Did you mean --when?")]
    [InlineData("add canopy 5 --when sideways --area green", 1, "before, after")]
    public void A_mistake_is_refused_with_what_to_do(string typed, int exit, string hint)
    {
        using var bench = Mown();
        var ran = bench.Run(typed.Split(' '));
        Assert.Equal((exit, ""), (ran.Exit, ran.Out));
        Assert.Contains(hint, ran.Error, StringComparison.Ordinal);
    }

    public static TheoryData<string, string> Shorts => new()
    {
        { "gauge 6.1 6.3", """{"leftMm":6.1,"rightMm":6.3}""" },
        { "gauge right 6.3", """{"rightMm":6.3}""" },
        { "screw left +0.25", """{"leftTurns":0.25}""" },
        { "screw left -1/4", """{"leftTurns":-0.25}""" },
        { "screw left 1/4 turn", """{"leftTurns":0.25}""" },
        { "screw left +0.25 right 0.1", """{"leftTurns":0.25,"rightTurns":0.1}""" },
        { "screw both +0.5", """{"leftTurns":0.5,"rightTurns":0.5}""" },
        { "locked", "{}" },
        { "canopy 5mm --how ruler --when after", """{"mm":5,"how":"ruler","when":"after"}""" },
        { "canopy 5 5.5 5 --when after", """{"mm":[5,5.5,5],"when":"after"}""" },
        { "canopy 5..6 after", """{"lowMm":5,"highMm":6,"when":"after"}""" },
    };

    [Theory]
    [MemberData(nameof(Shorts))]
    public void A_short_form_is_kept_as_the_fields_it_means(string typed, string fields)
    {
        using var bench = Mown();
        var words = typed.Split(' ');
        Assert.Equal(0, bench.Run(["add", .. words, .. words[0] == "canopy" ? (string[])["--area", "green"] : []]).Exit);
        var kept = JsonNode.Parse(bench.Run("book", "export").Lines[^1])!.AsObject();
        Assert.Equal(words[0], (string)kept["kind"]!);
        Assert.All(JsonNode.Parse(fields)!.AsObject(), f => Assert.True(JsonNode.DeepEquals(f.Value, kept[f.Key]), $"{f.Key}: {kept[f.Key]}"));
        Assert.Equal(JsonNode.Parse(fields)!.AsObject().Count, kept.Count(f => f.Key.EndsWith("Mm", StringComparison.Ordinal) || f.Key.EndsWith("Turns", StringComparison.Ordinal) || f.Key is "mm" or "how" or "when"));
    }

    /// <summary>A unit with one gauging, one mowing and three spots read after it.</summary>
    private static Bench Mown()
    {
        var bench = new Bench();
        bench.Run("new", "--unit", "mower");
        foreach (var typed in (string[])["gauge 5.0 5.1 locked", "mow 60 min --area green", "canopy 4.5 4.4 4.6 --when after --how ruler --area green"]) bench.Run(["add", .. typed.Split(' ')]);
        return bench;
    }
}
