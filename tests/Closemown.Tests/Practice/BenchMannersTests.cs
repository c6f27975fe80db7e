using System.Text.Json.Nodes;
using Xunit;

namespace Closemown.Tests.Practice;

/// <summary>What a mechanic does that a sum does not know, through the pipe, in several states of belief. All are common practice, no source.</summary>
public sealed class BenchMannersTests
{
    private const string GoodFit = """{"kind":"fit","playLeft":"none","playRight":"none","knifeScrews":"tight","adjusters":"free","blades":"straight"}""";
    private const string Cuts = """{"kind":"paper-cut","left":"cuts","centre":"cuts","right":"cuts"}""";
    private const string Folds = """{"kind":"paper-cut","left":"folds","centre":"folds","right":"folds"}""";
    private const string Middle = """{"kind":"paper-cut","left":"cuts","centre":"folds","right":"cuts"}""";
    private const string Untouched = """{"kind":"contact","left":"none","right":"none"}""";
    private const string Touching = """{"kind":"contact","left":"light","right":"light"}""";

    /// <summary>Books in which much, little or nothing is known of the unit.</summary>
    public static TheoryData<string> States => new("new", "rebuilt", "known", "worn", "turned");

    private static Piped In(string state)
    {
        var pipe = new Piped();
        switch (state)
        {
            case "rebuilt":
                pipe.Say(GoodFit, """{"kind":"rebuild","what":["bearings"]}""", GoodFit);
                break;
            case "known":
                pipe.Say(GoodFit);
                for (var week = 0; week < 6; week++)
                    pipe.Say(Touching, Cuts, """{"kind":"mow","hours":1}""", """{"kind":"swath","left":"clean","centre":"clean","right":"clean"}""");
                break;
            case "worn":
                pipe.Say(GoodFit);
                for (var week = 0; week < 4; week++)
                    pipe.Say(Untouched, Folds, """{"kind":"clicks","left":1,"right":1}""", Touching, """{"kind":"paper-cut","left":"nicks","centre":"nicks","right":"nicks"}""", """{"kind":"mow","hours":2}""");
                break;
            case "turned":
                pipe.Say(GoodFit, Folds, """{"kind":"clicks","left":2,"right":2}""", Untouched, """{"kind":"clicks","left":2,"right":2}""");
                break;
        }
        return pipe;
    }

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

    [Theory]
    [InlineData("new", 0.04)]
    [InlineData("known", 0.04)]
    [InlineData("worn", 0.0)]
    public void P20_both_ends_cut_and_the_middle_folds_twice_is_a_hollow_and_no_adjuster_is_turned(string state, double hollowMm)
    {
        var pipe = In(state);
        pipe.Say(GoodFit, Middle);
        var laps = 0;
        for (var i = 0; i < 6; i++)
        {
            var step = pipe.Next();
            if ((string)step["do"]! == "straightedge") break;
            laps += (string)step["do"]! == "lap" ? 1 : 0;
            pipe.Say(step["stations"] is JsonArray at ? $$"""{"kind":"{{step["do"]}}",{{string.Join(',', at.Select(s => $"\"{s}\":\"{((string)step["do"]! switch { "contact" => "light", "paper-cut" => (string)s! == "centre" ? "folds" : "cuts", "torch" => "none", _ => "tight" })}\""))}}}""" : Answer(step));
            if (i == 2) pipe.Say(Middle);
        }
        Assert.InRange(laps, 0, 1);
        var hollow = pipe.Next();
        Assert.Equal("straightedge", (string)hollow["do"]!);
        Assert.Contains("hollow", string.Join(' ', hollow["why"]!.AsArray()), StringComparison.Ordinal);
        Assert.True((double)pipe.Steel()["hollow"]!["probability"]! > 0.3, $"{pipe.Steel()["hollow"]} {pipe.Steel()["bowUm"]}");
        Assert.Contains("straightedge", pipe.Say("""{"ask":"today"}""")["today"]!["now"]!.ToJsonString(), StringComparison.Ordinal);
        pipe.Say($$"""{"kind":"measure","what":"straightedge","centre":{{hollowMm.ToString(System.Globalization.CultureInfo.InvariantCulture)}}}""");
        Assert.Equal("knife-screws", (string)pipe.Next()["do"]!);
        pipe.Say("""{"kind":"service","what":"knife-screws"}""");
        Assert.Equal("contact", (string)pipe.Next()["do"]!);
        pipe.Say(Touching);
        Assert.Equal("paper-cut", (string)pipe.Next()["do"]!);
        pipe.Say(Middle);
        var last = pipe.Next();
        Assert.Equal("repair", (string)last["do"]!);
        Assert.Contains(hollowMm > 0 ? "bedknife" : "reel", (string)last["say"]!, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void P20_a_middle_that_cuts_again_after_the_screws_is_cured()
    {
        var pipe = In("known");
        pipe.Say(Middle, Touching, Middle, """{"kind":"service","what":"knife-screws"}""", Touching, Cuts);
        Assert.Equal("mow Mow", $"{pipe.Next()["do"]} {pipe.Next()["say"]}"[..7]);
        Assert.Null(pipe.Steel()["hollow"]);
    }

    [Theory]
    [MemberData(nameof(States))]
    public void P21_after_a_hit_somebody_looks_first_whatever_was_done_since(string state)
    {
        foreach (var since in (string[][])[[], ["""{"kind":"stone","what":"burr"}"""], [Touching, Cuts], [Folds, """{"kind":"clicks","left":1,"right":1}"""], ["""{"kind":"rebuild"}"""], ["""{"kind":"mow","hours":1}"""]])
        {
            var pipe = In(state);
            pipe.Say("""{"kind":"strike","where":"left"}""");
            if (since.Length > 0) pipe.Say(since);
            Assert.Equal("fit", (string)pipe.Next()["do"]!);
            pipe.Say(GoodFit);
            Assert.NotEqual("fit", (string)pipe.Next()["do"]!);
        }
    }

    [Fact]
    public void P22_it_is_made_safe_on_every_path_to_the_first_step_and_a_strange_mower_is_looked_over_once()
    {
        foreach (var before in (string[][])[[], [Folds], [Cuts, Untouched], ["""{"kind":"strip","um":80}""", Folds]])
        {
            var pipe = new Piped();
            if (before.Length > 0) pipe.Say(before);
            var step = before.Length > 0 ? pipe.Next() : pipe.Say("""{"ask":"next","unit":"mower"}""")["next"]!;
            Assert.Equal("fit", (string)step["do"]!);
            Assert.Contains("spark lead", string.Join(' ', step["cautions"]!.AsArray()), StringComparison.Ordinal);
            pipe.Say(before.Length > 0 ? GoodFit : GoodFit.Replace("{", """{"unit":"mower",""", StringComparison.Ordinal));
            Assert.NotEqual("fit", (string)pipe.Next()["do"]!);
        }
        var known = In("known");
        known.Say(Folds);
        Assert.Contains("spark lead", string.Join(' ', known.Next()["cautions"]!.AsArray()), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(States))]
    public void P23_a_warm_reel_turns_no_adjuster(string state)
    {
        foreach (var (warm, felt) in from w in (string[])["just-run", "sun"] from f in (string[])["heavy", "light", "none"] select (w, f))
        {
            var pipe = In(state);
            pipe.Say($$"""{"kind":"contact","left":"{{felt}}","right":"light","state":"{{warm}}","at":"2026-06-01T10:00:00Z"}""");
            var step = pipe.Next();
            Assert.Equal("wait", (string)step["do"]!);
            Assert.InRange((double)step["minutes"]!, 20, 30);
            pipe.Say("""{"kind":"look","colour":"green","at":"2026-06-01T10:40:00Z"}""");
            Assert.Equal("contact", (string)pipe.Next()["do"]!);
            pipe.Say("""{"kind":"contact","left":"light","right":"light","state":"cold","at":"2026-06-01T10:41:00Z"}""");
            Assert.NotEqual("wait", (string)pipe.Next()["do"]!);
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

    [Fact]
    public void P27_readings_that_name_a_blade_are_no_mistake_for_differing()
    {
        var pipe = In("known");
        for (var week = 0; week < 2; week++) pipe.Say(Touching, Cuts);
        pipe.Say("""{"kind":"contact","left":"heavy","right":"light","blade":"3"}""", """{"kind":"contact","left":"none","right":"light","blade":"5"}""", """{"kind":"contact","left":"none","right":"none","blade":"7"}""");
        Assert.Empty(pipe.Steel()["unusual"]!.AsArray());
        Assert.DoesNotContain("mistaken", pipe.Next().ToJsonString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(""" "blades":"nicked" """, "stone", "nick", 15)]
    [InlineData(""" "knifeScrews":"loose" """, "knife-screws", null, 10)]
    [InlineData(""" "playLeft":"knocks" """, "repair", null, 120)]
    [InlineData(""" "blades":"bent" """, "repair", null, 120)]
    [InlineData(""" "adjusters":"slipping" """, "repair", null, 60)]
    public void P28_small_faults_have_small_repairs(string fault, string step, string? what, double most)
    {
        foreach (var state in (string[])["new", "known", "worn"])
        {
            var pipe = In(state);
            pipe.Say($$"""{"kind":"fit",{{fault}}}""");
            var next = pipe.Next();
            Assert.Equal(step, (string)next["do"]!);
            Assert.Equal(what, (string?)next["what"]);
            Assert.InRange((double)next["takesMinutes"]!, 1, most);
            pipe.Say(Answer(next));
            // Only what was taken apart or tightened is looked at again.
            if (step == "stone") Assert.NotEqual("fit", (string)pipe.Next()["do"]!);
            else Assert.Equal("fit", (string)pipe.Next()["do"]!);
            Assert.NotEqual(step, (string)pipe.Next()["do"]!);
        }
    }

    [Fact]
    public void P28_all_faults_of_a_look_at_the_fit_are_named_each_with_its_step_and_minutes()
    {
        var pipe = In("known");
        pipe.Say("""{"kind":"fit","playLeft":"knocks","playRight":"none","knifeScrews":"loose","blades":"nicked","adjusters":"stiff"}""");
        var step = pipe.Next();
        Assert.Equal("repair", (string)step["do"]!);
        Assert.Equal(["knife-screws", "stone", "fit"], step["then"]!.AsArray().Select(t => (string)t!["do"]!));
        Assert.All(step["then"]!.AsArray(), t => Assert.True((double)t!["takesMinutes"]! > 0));
        var why = string.Join(' ', step["why"]!.AsArray());
        foreach (var word in (string[])["left bearing", "screws", "nick", "stiff adjuster", "min"]) Assert.Contains(word, why, StringComparison.Ordinal);
    }

    [Fact]
    public void P29_a_strip_too_thick_is_said_once_and_a_thinner_one_asked_for()
    {
        foreach (var state in (string[])["new", "known", "worn"])
        {
            var pipe = In(state);
            pipe.Say(GoodFit, """{"kind":"strip","um":200}""");
            Assert.Equal("strip", (string)pipe.Next()["do"]!);
            pipe.Say(Folds);
            Assert.NotEqual("strip", (string)pipe.Next()["do"]!);
            var other = In(state);
            other.Say(GoodFit, """{"kind":"strip","um":200}""", """{"kind":"strip","um":70}""");
            Assert.NotEqual("strip", (string)other.Next()["do"]!);
        }
    }

    [Theory]
    [MemberData(nameof(States))]
    public void P30_two_people_who_read_opposite_things_take_one_strip_together_before_anything_is_turned(string state)
    {
        foreach (var (kind, one, other) in (IEnumerable<(string, string, string)>)[("contact", "none", "heavy"), ("contact", "heavy", "none"), ("paper-cut", "cuts", "folds")])
        {
            var pipe = In(state);
            pipe.Say(GoodFit, $$"""{"kind":"{{kind}}","left":"{{one}}","right":"{{one}}","by":"ann"}""", $$"""{"kind":"{{kind}}","left":"{{other}}","by":"bob"}""");
            var step = pipe.Next();
            Assert.Equal("paper-cut", (string)step["do"]!);
            Assert.Equal(["left"], step["stations"]!.AsArray().Select(s => (string)s!));
            Assert.Contains("both", (string)step["say"]!, StringComparison.Ordinal);
            pipe.Say("""{"kind":"paper-cut","left":"nicks","by":"ann"}""");
            Assert.DoesNotContain("both of you", (string)pipe.Next()["say"]!, StringComparison.Ordinal);
        }
    }

    /// <summary>The entry that says a step which is no check was done.</summary>
    private static string Answer(JsonNode step) => (string)step["do"]! switch
    {
        "fit" => GoodFit,
        "clicks" => $$"""{"kind":"clicks","left":{{(int?)step["left"] ?? 0}},"right":{{(int?)step["right"] ?? 0}}}""",
        "lap" => $$"""{"kind":"lap","minutes":{{((double)step["minutes"]!).ToString(System.Globalization.CultureInfo.InvariantCulture)}}}""",
        "stone" => $$"""{"kind":"stone","what":"{{step["what"]}}"}""",
        "grind" => """{"kind":"grind","what":"both"}""",
        "repair" => """{"kind":"rebuild"}""",
        "straightedge" => """{"kind":"measure","what":"straightedge","centre":0.02}""",
        "knife-screws" => """{"kind":"service","what":"knife-screws"}""",
        "strip" => """{"kind":"strip","um":70}""",
        "square-up" => """{"kind":"square-up","stripUm":80}""",
        var other => throw new InvalidOperationException(other),
    };
}
