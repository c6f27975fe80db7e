using System.Text.Json.Nodes;
using Xunit;
using static Closemown.Tests.Practice.BenchStates;

namespace Closemown.Tests.Practice;

/// <summary>What a mechanic does at the nip that a sum does not know, through the pipe, in several states of belief. All are common practice, no source.</summary>
public sealed class BenchMannersTests
{
    /// <summary>Much, little or nothing is known of the unit.</summary>
    public static TheoryData<string> States => BenchStates.All;

    [Theory]
    [MemberData(nameof(States))]
    public void P15_a_heavy_touch_is_backed_off_at_once_and_then_felt(string state)
    {
        foreach (var (left, centre, right) in (IEnumerable<(string?, string?, string?)>)[("heavy", null, "none"), ("none", null, "heavy"), ("heavy", null, "heavy"), ("light", "heavy", "none"), ("heavy", "none", "light")])
        {
            var pipe = In(state);
            pipe.Say(new JsonObject { ["kind"] = "contact", ["left"] = left, ["centre"] = centre, ["right"] = right }.ToJsonString());
            var step = pipe.Next();
            var (l, r) = ((int?)step["left"] ?? 0, (int?)step["right"] ?? 0);
            Assert.Equal("clicks", (string)step["do"]!);
            Assert.True(left == "heavy" || centre == "heavy" ? l is -1 or -2 : l == 0, $"{state}: left {l}");
            Assert.True(right == "heavy" || centre == "heavy" ? r is -1 or -2 : r == 0, $"{state}: right {r}");
            Assert.Contains("backed off", string.Join(' ', step["why"]!.AsArray()), StringComparison.Ordinal);
            Assert.Equal("heavy-out", (string)pipe.Say($$"""{"ask":"why","id":"{{step["advice"]}}"}""")["why"]!["rules"]![0]!["id"]!);
            Assert.Equal("clicks", (string)pipe.Say("""{"ask":"today"}""")["today"]!["now"]!["do"]!);
            Assert.Equal("safety", (string)pipe.Say("""{"ask":"today"}""")["today"]!["now"]!["urgency"]!);
            pipe.Say($$"""{"kind":"clicks","left":{{l}},"right":{{r}}}""");
            var after = pipe.Next();
            Assert.Equal("contact", (string)after["do"]!);
            Assert.Equal(["left", "right"], after["stations"]!.AsArray().Select(s => (string)s!));
        }
    }

    [Theory]
    [MemberData(nameof(States))]
    public void P25_an_end_that_does_not_follow_its_adjuster_is_named_with_what_to_look_at(string state)
    {
        foreach (var side in (string[])["left", "right"])
        {
            var (left, right) = side == "left" ? ("folds", "cuts") : ("cuts", "folds");
            var pipe = In(state);
            pipe.Say(GoodFit);
            pipe.Say("""{"kind":"contact","left":"none","right":"none"}""");
            pipe.Say("""{"kind":"paper-cut","left":"folds","centre":"folds","right":"folds"}""");
            pipe.Say("""{"kind":"clicks","left":2,"right":2}""");
            pipe.Say("""{"kind":"contact","left":"none","right":"none"}""");
            pipe.Say($$"""{"kind":"paper-cut","left":"{{left}}","centre":"nicks","right":"{{right}}"}""");
            Assert.DoesNotContain("does not follow", pipe.Next().ToJsonString(), StringComparison.Ordinal);
            pipe.Say($$"""{"kind":"clicks","{{side}}":2}""");
            pipe.Say("""{"kind":"contact","left":"none","right":"none"}""");
            pipe.Say($$"""{"kind":"paper-cut","left":"{{left}}","centre":"nicks","right":"{{right}}"}""");
            var step = pipe.Next();
            Assert.Equal("fit", (string)step["do"]!);
            Assert.Contains($"{side} adjuster: lock nut, thread, spring and housing", (string)step["say"]!, StringComparison.Ordinal);
            Assert.Contains($"The {side} end does not follow: 4 steps in", string.Join(' ', step["why"]!.AsArray()), StringComparison.Ordinal);
            pipe.Say(GoodFit);
            Assert.DoesNotContain("does not follow", pipe.Next().ToJsonString(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void P25_both_ends_far_out_and_neither_changed_yet_is_no_fault()
    {
        var pipe = In("new");
        pipe.Say(GoodFit);
        pipe.Say("""{"kind":"paper-cut","left":"folds","centre":"folds","right":"folds"}""");
        for (var go = 0; go < 3; go++)
        {
            pipe.Say("""{"kind":"clicks","left":2,"right":2}""");
            pipe.Say("""{"kind":"contact","left":"none","right":"none"}""");
            pipe.Say("""{"kind":"paper-cut","left":"folds","centre":"folds","right":"folds"}""");
            Assert.Equal("clicks", (string)pipe.Next()["do"]!);
        }
    }

    [Theory]
    [MemberData(nameof(States))]
    public void P15_it_is_felt_after_any_way_of_backing_off(string state)
    {
        var pipe = In(state);
        pipe.Say("""{"kind":"contact","left":"heavy","right":"none"}""", """{"kind":"clicks","left":-3}""");
        Assert.Equal("contact", (string)pipe.Next()["do"]!);
    }

    [Theory]
    [MemberData(nameof(States))]
    public void P16_no_check_is_asked_twice_at_a_place_with_nothing_changed_between(string state)
    {
        foreach (var (felt, cut) in (IEnumerable<(string, string)>)[("none", "folds"), ("light", "cuts"), ("none", "cuts"), ("light", "folds"), ("none", "nicks")])
        {
            var pipe = In(state);
            var made = new HashSet<(string, string)>();
            for (var i = 0; i < 25; i++)
            {
                var step = pipe.Next();
                var kind = (string)step["do"]!;
                if (kind == "mow") break;
                if (string.Join(' ', step["why"]!.AsArray()).Contains("read it again", StringComparison.Ordinal)) made.Clear();
                if (step["stations"] is JsonArray at)
                {
                    foreach (var s in at) Assert.True(made.Add((kind, (string)s!)), $"{state}, {felt}, {cut}: {kind} again at {s}");
                    pipe.Say($$"""{"kind":"{{kind}}",{{string.Join(',', at.Select(s => $"\"{s}\":\"{(kind switch { "contact" => felt, "paper-cut" => cut, "torch" => "thin", _ => "loose" })}\""))}}}""");
                    continue;
                }
                made.Clear();
                pipe.Say(Answer(step));
            }
        }
    }

    [Fact]
    public void P16_felt_again_with_nothing_changed_hardly_moves_the_belief()
    {
        double Sd(int times, string? unit = null)
        {
            var pipe = In("rebuilt");
            if (unit is not null) pipe.Say(unit);
            for (var i = 0; i < times; i++) pipe.Say(Touching);
            return Piped.Sd(pipe.Steel(), "clearanceUm", "left");
        }
        var (one, two, five) = (Sd(1), Sd(2), Sd(5));
        Assert.True(two > 0.9 * one && five > 0.8 * one, $"{one}, {two}, {five}");
        var fresh = Sd(5, """{"kind":"unit","priors":{"repeatShare":[0,0.1]}}""");
        Assert.True(fresh < 0.9 * five, $"{fresh}, {five}");
    }

    [Theory]
    [InlineData("new", "none")]
    [InlineData("new", "light")]
    [InlineData("rebuilt", "none")]
    [InlineData("known", "none")]
    [InlineData("known", "light")]
    [InlineData("worn", "none")]
    public void P17_what_cuts_everywhere_and_leaves_a_clean_swath_mows_after_one_further_check_at_most(string state, string felt)
    {
        var pipe = In(state);
        pipe.Say(Cuts);
        var further = 0;
        for (var step = pipe.Next(); (string)step["do"]! != "mow"; step = pipe.Next())
        {
            Assert.True(step["stations"] is not null || (string)step["do"]! == "fit", $"{state}: {step["say"]}");
            Assert.True(++further <= 1, $"{state}: {step["say"]}");
            pipe.Say((string)step["do"]! == "fit" ? GoodFit : $$"""{"kind":"{{step["do"]}}",{{string.Join(',', step["stations"]!.AsArray().Select(s => $"\"{s}\":\"{((string)step["do"]! switch { "contact" => felt, "paper-cut" => "cuts", _ => "thin" })}\""))}}}""");
        }
    }

    [Fact]
    public void P18_rebuilt_and_far_it_comes_in_two_at_a_time_until_it_cuts_or_one_end_is_just_felt()
    {
        foreach (var far in (double[])[90, 130, 70])
        {
            var (left, right, edge, click, goes, steps, minutes) = (far, far + 12, 5.0, 19.0, 0, 0, 0.0);
            var pipe = In("rebuilt");
            pipe.Say(Folds);
            var first = pipe.Next();
            Assert.Equal(("clicks", 2, 2), ((string)first["do"]!, (int)first["left"]!, (int)first["right"]!));
            for (var step = first; (string)step["do"]! != "mow"; step = pipe.Next())
            {
                Assert.True(++steps < 20, "it does not end");
                minutes += (double)step["takesMinutes"]!;
                var kind = (string)step["do"]!;
                if (kind == "clicks") goes++;
                if (kind == "clicks") (left, right) = (left - (click * ((int?)step["left"] ?? 0)), right - (click * ((int?)step["right"] ?? 0)));
                double Gap(string s) => s switch { "left" => left, "right" => right, _ => (left + right) / 2 };
                pipe.Say(step["stations"] is JsonArray at ? $$"""{"kind":"{{kind}}",{{string.Join(',', at.Select(s => $"\"{s}\":\"{Found(kind, Gap((string)s!))}\""))}}}""" : Answer(step));
            }
            Assert.InRange(goes, 1, 7);
            Assert.True(minutes < 17, $"{far}: {minutes} minutes");

            string Found(string kind, double gap) => kind switch
            {
                "contact" => gap < -12 ? "heavy" : gap < 8 ? "light" : "none",
                "paper-cut" => gap + edge < 36 ? "cuts" : gap + edge < 56 ? "nicks" : "folds",
                "torch" => "none",
                _ => gap < 72 ? "tight" : gap < 88 ? "slight" : "loose",
            };
        }
    }

    [Theory]
    [MemberData(nameof(States))]
    public void P19_after_any_turn_or_lap_the_strip_comes_last(string state)
    {
        foreach (var change in (string[])["""{"kind":"clicks","left":1,"right":1}""", """{"kind":"clicks","left":-1}""", """{"kind":"lap","minutes":1}"""])
        {
            var pipe = In(state);
            pipe.Say(GoodFit, Cuts, change);
            var (felt, fed) = (new HashSet<string>(), new HashSet<string>());
            for (var i = 0; i < 30; i++)
            {
                var step = pipe.Next();
                var kind = (string)step["do"]!;
                if (kind == "mow")
                {
                    Assert.Equal(3, fed.Count);
                    Assert.Superset(new HashSet<string>(["left", "right"]), felt);
                    Assert.DoesNotContain("100 in 100", step.ToJsonString(), StringComparison.Ordinal);
                    return;
                }
                if (step["stations"] is not JsonArray at)
                {
                    fed.Clear();
                    felt.Clear();
                    pipe.Say(Answer(step));
                    continue;
                }
                foreach (var s in at) (kind == "paper-cut" ? fed : kind == "contact" ? felt : []).Add((string)s!);
                pipe.Say($$"""{"kind":"{{kind}}",{{string.Join(',', at.Select(s => $"\"{s}\":\"{(kind switch { "contact" => "none", "paper-cut" => "cuts", "torch" => "none", _ => "loose" })}\""))}}}""");
            }
            Assert.Fail($"{state}: it never mows");
        }
    }

    [Fact]
    public void P24_a_click_in_on_an_end_that_touches_stands_in_one_sentence_with_its_lap()
    {
        var seen = 0;
        foreach (var edge in (string[])["folds", "nicks"])
        {
            foreach (var state in (string[])["new", "known", "worn", "rebuilt"])
            {
                var pipe = In(state);
                pipe.Say("""{"kind":"unit","relief":"yes"}""", GoodFit, Touching, Folds.Replace("folds", edge, StringComparison.Ordinal), """{"kind":"torch","left":"wide","centre":"wide","right":"wide"}""");
                var step = pipe.Next();
                if ((string)step["do"]! != "clicks" || (((int?)step["left"] ?? 0) <= 0 && ((int?)step["right"] ?? 0) <= 0)) continue;
                seen++;
                Assert.Matches("(?i)in .*, then (back-?)?lap ", (string)step["say"]!);
                var then = step["then"]!.AsArray().Select(t => (string)t!["do"]!).ToList();
                for (var i = 1; i < then.Count; i++)
                {
                    if (then[i] == "lap" && then.IndexOf("lap") < i) Assert.Equal(["contact", "paper-cut"], then[(i - 2)..i]);
                }
            }
        }
        Assert.True(seen > 0, "no state led to a click in with a lap");
    }
}
