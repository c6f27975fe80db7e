using System.Text.Json.Nodes;
using Xunit;
using static Closemown.Tests.Practice.BenchStates;

namespace Closemown.Tests.Practice;

/// <summary>What a mechanic does about a fault, a hit, a warm reel or two minds, through the pipe, in several states of belief. All are common practice, no source.</summary>
public sealed class FaultMannersTests
{
    /// <summary>Much, little or nothing is known of the unit.</summary>
    public static TheoryData<string> States => BenchStates.All;

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
}
