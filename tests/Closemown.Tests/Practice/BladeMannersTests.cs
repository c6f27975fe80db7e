using System.Text.Json.Nodes;
using Xunit;
using static Closemown.Tests.Practice.BenchStates;

namespace Closemown.Tests.Practice;

/// <summary>Blades differ: a touch once a turn, and readings that name a blade, through the pipe. All are common practice, no source.</summary>
public sealed class BladeMannersTests
{
    private static readonly string[] Turns = ["clicks", "square-up", "lap", "grind"];

    public static TheoryData<string> States => BenchStates.All;

    [Theory]
    [MemberData(nameof(States))]
    public void P27_a_touch_once_a_turn_is_a_fact_of_the_reel_and_turns_nothing_before_the_tightest_blade_is_known(string state)
    {
        var pipe = In(state);
        pipe.Say(GoodFit, """{"kind":"contact","left":"none","right":"once-a-turn"}""");
        for (var blade = 1; blade <= 3; blade++)
        {
            var step = pipe.Next();
            Assert.Equal(("contact", blade.ToString(System.Globalization.CultureInfo.InvariantCulture)), ((string)step["do"]!, (string?)step["blade"]));
            Assert.Equal(["right"], step["stations"]!.AsArray().Select(s => (string)s!));
            Assert.Contains("once a turn", string.Join(' ', step["why"]!.AsArray()), StringComparison.Ordinal);
            Assert.Equal("contact", (string)pipe.Say("""{"ask":"today"}""")["today"]!["now"]!["do"]!);
            pipe.Say($$"""{"kind":"contact","right":"{{(blade == 3 ? "light" : "none")}}","blade":"{{blade}}"}""");
        }
        var after = pipe.Next();
        Assert.Null(after["blade"]);
        Assert.Contains("3 is the tightest", pipe.Say($$"""{"ask":"why","id":"{{after["advice"]}}"}""").ToJsonString(), StringComparison.Ordinal);
        Assert.Empty(pipe.Steel()["unusual"]!.AsArray());
    }

    [Theory]
    [MemberData(nameof(States))]
    public void P27_once_a_turn_never_turns_an_adjuster_by_itself(string state)
    {
        foreach (var where in (string[])["\"left\"", "\"centre\"", "\"right\""])
        {
            var pipe = In(state);
            pipe.Say($$"""{"kind":"contact","left":"light","right":"light",{{where}}:"once-a-turn"}""".Replace($"{where}:\"light\",", "", StringComparison.Ordinal));
            Assert.DoesNotContain((string)pipe.Next()["do"]!, Turns);
        }
    }

    [Theory]
    [MemberData(nameof(States))]
    public void P27_a_heavy_blade_is_backed_off_whatever_the_next_blade_shows(string state)
    {
        var pipe = In(state);
        pipe.Say("""{"kind":"contact","left":"heavy","right":"light","blade":"3"}""", """{"kind":"contact","left":"none","right":"none","blade":"4"}""");
        var step = pipe.Next();
        Assert.Equal("clicks", (string)step["do"]!);
        Assert.InRange((int)step["left"]!, -2, -1);
    }

    [Theory]
    [MemberData(nameof(States))]
    public void P27_no_reading_of_a_blade_is_odd_or_mistaken_for_being_unlike_the_others(string state)
    {
        foreach (var (kind, words) in (IEnumerable<(string, string[])>)[("contact", ["none", "light"]), ("paper-cut", ["cuts", "folds"]), ("paper-drag", ["tight", "loose"])])
        {
            var pipe = In(state);
            pipe.Say(GoodFit);
            for (var blade = 1; blade <= 8; blade++)
            {
                var said = pipe.Say($$"""{"kind":"{{kind}}","left":"{{words[blade % 2]}}","right":"{{words[(blade + 1) % 2]}}","blade":"{{blade}}"}""");
                Assert.True((bool)said["ok"]!);
            }
            Assert.Empty(pipe.Steel()["unusual"]!.AsArray());
            Assert.Empty(pipe.Say("""{"ask":"today"}""")["today"]!["unusual"]!.AsArray());
            var step = pipe.Next();
            Assert.DoesNotContain("read it again", step.ToJsonString(), StringComparison.Ordinal);
            Assert.DoesNotContain("mistaken", step.ToJsonString(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void P27_two_people_who_read_two_blades_do_not_disagree()
    {
        static string Why(string blade) => string.Join(' ', Read(blade)["why"]!.AsArray());
        static JsonNode Read(string blade)
        {
            var pipe = In("known");
            pipe.Say("""{"kind":"paper-cut","left":"cuts","centre":"cuts","right":"cuts","by":"A","blade":"1"}""",
                $$"""{"kind":"paper-cut","left":"folds","centre":"cuts","right":"cuts","by":"B","blade":"{{blade}}"}""");
            return pipe.Next();
        }
        Assert.Contains("Two people", Why("1"), StringComparison.Ordinal);
        Assert.DoesNotContain("Two people", Why("2"), StringComparison.Ordinal);
    }

    [Fact]
    public void P27_of_blades_that_differ_the_gap_is_that_of_the_mean_blade()
    {
        static double Gap(string first, string second)
        {
            var pipe = In("rebuilt");
            foreach (var (word, blade) in (IEnumerable<(string, int)>)[(first, 1), (second, 2)])
                pipe.Say($$"""{"kind":"paper-cut","left":"{{word}}","centre":"{{word}}","right":"{{word}}","blade":"{{blade}}"}""");
            return Piped.Mean(pipe.Steel(), "clearanceUm", "left");
        }
        var (tight, apart, wide) = (Gap("cuts", "cuts"), Gap("cuts", "folds"), Gap("folds", "folds"));
        Assert.True(tight + 3 < apart && apart + 3 < wide, $"{tight}, {apart}, {wide}");
    }
}
