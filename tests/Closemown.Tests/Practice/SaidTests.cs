using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Closemown.Tests.Pipe;
using Xunit;
using static Closemown.Tests.Practice.BenchStates;

namespace Closemown.Tests.Practice;

/// <summary>What a person is told at the bench: in places and clicks, rounded to what a hand can set, and never as certain.</summary>
public sealed class SaidTests
{
    public static TheoryData<string> States => BenchStates.All;

    [Theory]
    [MemberData(nameof(States))]
    public void An_evening_is_told_without_figures_of_the_reckoning(string state)
    {
        var seen = 0;
        foreach (var (felt, cut) in (IEnumerable<(string, string)>)[("none", "folds"), ("light", "nicks"), ("heavy", "cuts")])
        {
            foreach (var step in Evening(state, felt, cut))
            {
                seen++;
                string[] texts = [(string)step["say"]!, .. step["why"]!.AsArray().Select(w => (string)w!)];
                foreach (var text in texts)
                {
                    Assert.DoesNotContain("give or take", text, StringComparison.Ordinal);
                    Assert.DoesNotMatch("minutes' worth|-[0-9]", text);
                    foreach (Match um in Regex.Matches(text, "([0-9.]+) µm")) Assert.Equal(0, double.Parse(um.Groups[1].Value, CultureInfo.InvariantCulture) % 5);
                }
                Assert.InRange(Regex.Count(string.Join(' ', texts), "in 100"), 0, 1);
                Assert.DoesNotContain("100 in 100", step.ToJsonString(), StringComparison.Ordinal);
            }
        }
        Assert.True(seen > 10, $"{seen} steps");
    }

    [Theory]
    [MemberData(nameof(States))]
    public void Today_tells_a_chance_in_a_number_once_at_most(string state)
    {
        foreach (var cut in (string[])["cuts", "nicks", "folds"])
        {
            var pipe = In(state);
            pipe.Say($$"""{"kind":"paper-cut","left":"cuts","centre":"{{cut}}","right":"folds"}""", Untouched);
            var today = pipe.Say("""{"ask":"today"}""")["today"]!;
            Assert.InRange(Regex.Count(string.Join(' ', Talk.Texts(today)), "in 100"), 0, 1);
        }
    }

    [Fact]
    public void Why_gives_the_figures()
    {
        var pipe = In("worn");
        pipe.Say(Untouched, Folds);
        var why = pipe.Say($$"""{"ask":"why","id":"{{pipe.Next()["advice"]}}"}""")["why"]!;
        var reasons = string.Join(' ', why["reasons"]!.AsArray());
        Assert.Matches("[0-9]+ µm, give or take [0-9]+ µm", reasons);
        Assert.NotEmpty(why["alternatives"]!.AsArray());
    }

    [Fact]
    public void Why_is_told_in_clicks_and_places()
    {
        var pipe = In("turned");
        pipe.Say("""{"kind":"feeler","left":{"goUm":30,"noGoUm":40},"right":{"goUm":50,"noGoUm":60}}""", """{"kind":"contact","left":"none","right":"none"}""");
        Assert.Matches("The right end is about (half a click|one click|one and a half clicks) wider than the left", string.Join(' ', pipe.Next()["why"]!.AsArray()));
    }

    [Fact]
    public void What_is_expected_says_after_what()
    {
        var (plans, single) = (0, 0);
        foreach (var state in (string[])["new", "known", "worn", "rebuilt", "turned"])
        {
            foreach (var (felt, cut) in (IEnumerable<(string, string)>)[("none", "folds"), ("light", "nicks"), ("light", "folds"), ("heavy", "cuts")])
            {
                foreach (var step in Evening(state, felt, cut))
                {
                    var expect = step["expect"]!;
                    if (expect["clearanceUm"] is null) continue;
                    var whole = step["then"]!.AsArray().Count > 0;
                    Assert.Equal((string)step["do"]! == "mow" ? "now" : whole ? "plan" : "step", (string)expect["after"]!);
                    Assert.Equal((double)expect["inTolerance"]!, (double)expect["afterPlan"]!["inTolerance"]!);
                    var (alone, all) = (Gap(expect["afterStep"]!), Gap(expect["afterPlan"]!));
                    if (step["then"]!.AsArray().Any(t => (string)t!["do"]! is "lap" or "clicks") || ((string)step["say"]!).Contains("and so on", StringComparison.Ordinal))
                    {
                        plans++;
                        Assert.NotEqual(alone, all);
                    }
                    else
                    {
                        single++;
                        Assert.Equal(alone, all, 9);
                    }
                }
            }
        }
        Assert.True(plans > 0 && single > 0, $"{plans} plans, {single} single steps");

        static double Gap(JsonNode nip) => (double)nip["clearanceUm"]!["left"]!["mean"]! + (double)nip["clearanceUm"]!["right"]!["mean"]!;
    }

    [Fact]
    public void The_size_of_a_click_is_asked_for_once_and_holds_up_nothing()
    {
        var pipe = In("rebuilt");
        pipe.Say(Folds);
        var step = pipe.Next();
        Assert.Equal("clicks", (string)step["do"]!);
        Assert.Contains("How many clicks is one turn", (string)step["asks"]!, StringComparison.Ordinal);
        var told = In("rebuilt");
        told.Say("""{"kind":"unit","clickUm":18}""", Folds);
        Assert.Null(told.Next()["asks"]);
        pipe.Say(Answer(step), Untouched, Folds);
        var second = pipe.Next();
        Assert.Equal("clicks", (string)second["do"]!);
        Assert.Null(second["asks"]);
    }

    /// <summary>The steps of a sitting in which every check shows the same.</summary>
    private static IEnumerable<JsonNode> Evening(string state, string felt, string cut)
    {
        var pipe = In(state);
        for (var i = 0; i < 8; i++)
        {
            var step = pipe.Next();
            yield return step;
            var kind = (string)step["do"]!;
            if (kind == "mow") break;
            pipe.Say(step["stations"] is JsonArray at
                ? $$"""{"kind":"{{kind}}",{{string.Join(',', at.Select(s => $"\"{s}\":\"{(kind switch { "contact" => i > 4 ? "none" : felt, "paper-cut" => cut, "torch" => "wide", _ => "loose" })}\""))}}}"""
                : Answer(step));
        }
    }
}
