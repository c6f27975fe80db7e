using System.Text.Json.Nodes;
using Closemown.Estimation;
using Closemown.Quantities;
using Xunit;

namespace Closemown.Tests.Practice;

/// <summary>Ten facts of the trade as stories told to the pipe. All are common practice, no source.</summary>
public sealed class PracticeStoriesTests
{
    private const string GoodFit = """{"kind":"fit","playLeft":"none","playRight":"none","knifeScrews":"tight","adjusters":"free","blades":"straight"}""";
    private static readonly string[] Words = ["cuts", "nicks", "folds"];

    [Fact]
    public void P1_five_thirty_seconds_is_just_under_4_mm_and_the_book_keeps_what_was_typed()
    {
        var mm = Length.Parse("5/32 in", WritingStyle.Plain).Mm;
        Assert.Equal(3.96875, mm);
        Assert.Equal(5.55625, Length.Parse("7/32 in", WritingStyle.Plain).Mm);
        Assert.Equal("just under 1/4 in", LengthPrinting.InchFraction(6));
        var pipe = new Piped();
        Assert.True((bool)pipe.Say("""{"kind":"gauge","leftMm":3.96875,"rightMm":3.96875,"typed":{"leftMm":"5/32 in","rightMm":"5/32 in"}}""")["ok"]!);
    }

    [Fact]
    public void P2_one_to_two_thou_is_the_size_that_matters_and_reads_as_such()
    {
        Assert.Equal("1 thou", LengthPrinting.Gap(25.4, WritingStyle.American));
        Assert.Equal("2 thou", LengthPrinting.Gap(50.8, WritingStyle.American));
        var steel = new Piped().Steel();
        var high = (double)steel["bandUm"]![1]!;
        Assert.InRange(high, 25, 51);
        Assert.InRange(Piped.Mean(steel, "cleanUm"), 25, 51);
    }

    [Fact]
    public void P3_a_click_of_7_thou_is_questioned_and_0_7_thou_offered()
    {
        var pipe = new Piped();
        var answers = pipe.SayAll(
            """{"kind":"unit","clickUm":177.8,"typed":{"clickUm":"0.007 in"}}""",
            """{"kind":"unit","clickUm":177.8,"typed":{"clickUm":"0.007 in"},"confirmed":["clickUm"]}""",
            """{"kind":"unit","clickUm":17.78,"typed":{"clickUm":"0.0007 in"}}""");
        var error = answers[0]["error"]!;
        Assert.Equal("implausible", (string)error["code"]!);
        Assert.Equal("clickUm", (string)error["field"]!);
        Assert.Contains("17.8", (string)error["message"]!);
        Assert.Contains("0.001 to 0.002 in", (string)error["message"]!);
        Assert.True((bool)answers[1]["ok"]!);
        Assert.True((bool)answers[2]["ok"]!);
        Assert.Equal(17.78, Piped.Mean(pipe.Steel(), "clickUm", "left"), 1e-6);
    }

    [Fact]
    public void P4_after_a_rebuild_the_belief_is_wide_and_the_first_steps_are_checks()
    {
        var pipe = new Piped();
        pipe.Say(GoodFit, """{"kind":"contact","left":"light","right":"light"}""", """{"kind":"paper-cut","left":"cuts","centre":"cuts","right":"cuts"}""", """{"kind":"mow","hours":1}""");
        var before = pipe.Steel();
        pipe.Say("""{"kind":"rebuild","what":["bearings"]}""");
        var after = pipe.Steel();
        foreach (var station in (string[])["left", "right"]) Assert.True(Piped.Sd(after, "clearanceUm", station) > 3 * Piped.Sd(before, "clearanceUm", station));
        Assert.Equal("fit", (string)pipe.Next()["do"]!);
        pipe.Say(GoodFit);
        Assert.Contains((string)pipe.Next()["do"]!, (string[])["contact", "paper-drag", "paper-cut"]);
        pipe.Say("""{"kind":"contact","left":"none","right":"heavy"}""");
        for (var step = pipe.Next(); (string)step["do"]! != "mow"; step = pipe.Next())
        {
            Assert.NotEqual("lap", (string)step["do"]!);
            if ((string)step["do"]! == "clicks") Assert.True((int)step["right"]! <= 0);
            if ((string)step["do"]! is "clicks" or "square-up") break;
            pipe.Say($$"""{"kind":"{{(string)step["do"]!}}",{{string.Join(',', step["stations"]!.AsArray().Select(s => $"\"{s}\":\"{Found((string)step["do"]!, (string)s!)}\""))}}}""");
        }

        static string Found(string check, string station) => check switch
        {
            "contact" => station == "right" ? "heavy" : "none",
            "paper-cut" => station == "left" ? "folds" : "cuts",
            "paper-drag" => station == "right" ? "tight" : "slight",
            _ => "thin",
        };
    }

    [Fact]
    public void P5_the_side_that_folds_after_mowing_is_learned_to_open_more()
    {
        var pipe = new Piped();
        pipe.Say(GoodFit);
        for (var start = 0; start < 3; start++)
        {
            pipe.Say(
                """{"kind":"square-up","stripUm":80}""",
                """{"kind":"clicks","left":3,"right":3}""",
                """{"kind":"paper-cut","left":"cuts","centre":"cuts","right":"cuts"}""",
                """{"kind":"mow","hours":2}""", """{"kind":"mow","hours":2}""", """{"kind":"mow","hours":2}""",
                """{"kind":"paper-cut","left":"cuts","centre":"cuts","right":"folds"}""");
        }
        var steel = pipe.Steel();
        Assert.True(Piped.Mean(steel, "openingUmPerHour", "right") > Piped.Mean(steel, "openingUmPerHour", "left") + 1);
    }

    [Fact]
    public void P6_from_three_paper_checks_alone_no_step_turns_the_ends_far_against_each_other()
    {
        foreach (var (l, c, r) in from l in Words from c in Words from r in Words select (l, c, r))
        {
            var pipe = new Piped();
            pipe.Say($$"""{"kind":"paper-cut","left":"{{l}}","centre":"{{c}}","right":"{{r}}"}""");
            var next = pipe.Next();
            foreach (var step in next["then"]!.AsArray().Prepend(next).Where(s => (string)s!["do"]! == "clicks"))
                Assert.InRange(Math.Abs((int)step!["left"]! - (int)step["right"]!), 0, 1);
        }
    }

    [Fact]
    public void P7_a_lap_is_two_minutes_at_most_opens_both_ends_and_is_followed_by_one_or_two_clicks()
    {
        var pipe = new Piped();
        pipe.Say("""{"kind":"unit","relief":"yes"}""", GoodFit, """{"kind":"contact","left":"light","right":"light"}""",
            """{"kind":"paper-cut","left":"folds","centre":"folds","right":"folds"}""", """{"kind":"torch","left":"wide","centre":"wide","right":"wide"}""");
        var step = pipe.Next();
        while (step["stations"] is { } at)
        {
            pipe.Say($$"""{"kind":"{{(string)step["do"]!}}",{{string.Join(',', at.AsArray().Select(s => $"\"{s}\":\"{((string)step["do"]! switch { "contact" => "light", "paper-cut" => "folds", "torch" => "wide", _ => "tight" })}\""))}}}""");
            step = pipe.Next();
        }
        var laps = step["then"]!.AsArray().Prepend(step).Where(s => (string)s!["do"]! == "lap").ToList();
        Assert.NotEmpty(laps);                            // touching, and yet it folds: the edge is at fault
        Assert.All(laps, lap => Assert.InRange((double)lap!["minutes"]!, 0.1, 2));
        var before = pipe.Steel();
        pipe.Say("""{"kind":"lap","minutes":2,"grit":120}""");
        var after = pipe.Steel();
        foreach (var station in (string[])["left", "right"])
        {
            Assert.True(Piped.Mean(after, "clearanceUm", station) > Piped.Mean(before, "clearanceUm", station) + 2);
            Assert.True(Piped.Mean(after, "edgeUm", station) < Piped.Mean(before, "edgeUm", station) - 3);
        }
        pipe.Say("""{"kind":"contact","left":"none","right":"none"}""", """{"kind":"contact","left":"none","right":"none"}""",
            """{"kind":"paper-cut","left":"nicks","centre":"nicks","right":"nicks"}""");
        for (var i = 0; i < 6; i++)
        {
            var next = pipe.Next();
            if ((string)next["do"]! == "clicks")
            {
                Assert.InRange((int)next["left"]!, 1, 2);
                Assert.InRange((int)next["right"]!, 1, 2);
                return;
            }
            Assert.Contains((string)next["do"]!, (string[])["contact", "paper-cut", "torch", "paper-drag"]);
            pipe.Say($$"""{"kind":"{{(string)next["do"]!}}",{{string.Join(',', next["stations"]!.AsArray().Select(s => $"\"{s}\":\"{((string)next["do"]! switch { "contact" => "none", "paper-cut" => "nicks", "torch" => "thin", _ => "tight" })}\""))}}}""");
        }
        Assert.Fail("After the lap, with nothing touching and the strip only nicked, no step in was advised.");
    }

    [Fact]
    public void P8_each_class_of_grit_keeps_a_record_of_its_own()
    {
        var pipe = new Piped();
        pipe.Say("""{"kind":"unit","grits":[80,120],"adjusterAtMm":[-280,280]}""", GoodFit);
        for (var i = 0; i < 4; i++)
        {
            // Coarse opens by far more than fine here: five clicks closed the one, one click the other.
            pipe.Say("""{"kind":"feeler","left":{"goUm":5,"noGoUm":10},"right":{"goUm":5,"noGoUm":10}}""", """{"kind":"lap","minutes":2,"grit":80}""", """{"kind":"feeler","left":{"goUm":20,"noGoUm":25},"right":{"goUm":20,"noGoUm":25}}""",
                """{"kind":"clicks","left":1,"right":1}""", """{"kind":"feeler","left":{"goUm":5,"noGoUm":10},"right":{"goUm":5,"noGoUm":10}}""",
                """{"kind":"lap","minutes":2,"grit":120}""", """{"kind":"feeler","left":{"goUm":8,"noGoUm":14},"right":{"goUm":8,"noGoUm":14}}""");
        }
        var fine = Piped.Mean(pipe.Steel(), "lapUmPerMinute");
        pipe.Say("""{"kind":"lap","minutes":0.1,"grit":80}""");
        var coarse = Piped.Mean(pipe.Steel(), "lapUmPerMinute");
        Assert.True(coarse > fine + 0.8, $"coarse {coarse}, fine {fine}");
    }

    [Fact]
    public void P9_drag_at_both_ends_tells_a_tilt_of_one_to_three_clicks()
    {
        var pipe = new Piped();
        pipe.Say("""{"kind":"strip","um":80,"sdUm":2}""", GoodFit, """{"kind":"paper-drag","left":"slight","right":"loose"}""");
        var tilt = pipe.Steel()["tiltClicks"]!;
        var (mean, sd) = (-(double)tilt["mean"]!, (double)tilt["sd"]!);
        Assert.True(NormalMath.Phi((3 - mean) / sd) - NormalMath.Phi((1 - mean) / sd) > 0.5, $"right wider by {mean} ± {sd} clicks");
    }

    [Fact]
    public void P10_the_brake_is_freed_before_the_first_backwards_turn_of_a_sitting()
    {
        var pipe = new Piped();
        pipe.Say(GoodFit);
        var first = pipe.Next();
        Assert.Equal("contact", (string)first["do"]!);
        Assert.Contains(first["cautions"]!.AsArray(), c => ((string)c!).Contains("brake", StringComparison.Ordinal));
        pipe.Say("""{"kind":"contact","left":"none","right":"none"}""", """{"kind":"clicks","left":1,"right":1}""");
        var second = pipe.Next();
        Assert.Equal("contact", (string)second["do"]!);
        Assert.DoesNotContain(second["cautions"]!.AsArray(), c => ((string)c!).Contains("brake", StringComparison.Ordinal));
    }

    [Fact]
    public void From_folds_to_mow_in_the_steps_a_mechanic_would_take()
    {
        var pipe = new Piped();
        pipe.Say("""{"kind":"strip","um":80,"sdUm":3}""", GoodFit, """{"kind":"contact","left":"none","right":"none"}""", """{"kind":"contact","left":"none","right":"none"}""",
            """{"kind":"paper-cut","left":"folds","centre":"folds","right":"folds"}""");
        // A unit whose ends stand at 55 µm with edges worth 8, that answers as it truly would.
        var (left, right, click) = (55.0, 55.0, 18.0);
        var done = new List<string>();
        for (var i = 0; i < 25; i++)
        {
            var step = pipe.Next();
            var act = (string)step["do"]!;
            done.Add(act);
            if (act == "mow") break;
            pipe.Say(Answer(step, act));
        }
        Assert.Equal("mow", done[^1]);
        Assert.Contains("clicks", done);
        Assert.InRange(left, -6, 35);
        Assert.InRange(right, -6, 35);

        string Answer(JsonNode step, string act)
        {
            if (act == "clicks")
            {
                left -= click * (int)step["left"]!;
                right -= click * (int)step["right"]!;
                return $$"""{"kind":"clicks","left":{{step["left"]}},"right":{{step["right"]}}}""";
            }
            if (act == "lap") return $$"""{"kind":"lap","minutes":{{step["minutes"]}}}""";
            return $$"""{"kind":"{{act}}",{{string.Join(',', step["stations"]!.AsArray().Select(s => $"\"{s}\":\"{Found(act, (string)s!)}\""))}}}""";
        }

        string Found(string check, string station)
        {
            var gap = station == "left" ? left : station == "right" ? right : (left + right) / 2;
            return check switch
            {
                "contact" => gap - 6 < -12 ? "heavy" : gap - 6 < 4 ? "light" : "none",
                "paper-cut" => gap + 8 < 36 ? "cuts" : gap + 8 < 56 ? "nicks" : "folds",
                "paper-drag" => gap < 72 ? "tight" : gap < 88 ? "slight" : "loose",
                _ => "thin",
            };
        }
    }
}
