using System.Globalization;
using System.Text.Json.Nodes;
using Xunit;

namespace Closemown.Tests.Practice;

/// <summary>Facts of the trade about the height as stories told to the pipe. All are common practice, no source.</summary>
public sealed class HeightStoriesTests
{
    private const string Lock = """{"kind":"locked"}""";

    [Fact]
    public void P12_the_unit_sinks_a_millimetre_is_ordinary_and_three_are_a_surprise()
    {
        var start = Height(new Piped())["sinkMm"]!;
        Assert.True((double)start["p05"]! < 0.3 && (double)start["p95"]! > 1.3, start.ToJsonString());
        Assert.True(CutTold(5) > 0.1, "a millimetre at 6");
        Assert.True(CutTold(3) < 0.01, "an eighth of an inch");

        static double CutTold(double spots)
        {
            var pipe = new Piped();
            pipe.Say("""{"kind":"gauge","leftMm":6,"rightMm":6}""", """{"kind":"mow","hours":0.5,"area":"green"}""");
            return (double)pipe.Say($$"""{"kind":"canopy","mm":[{{spots}},{{spots}},{{spots}}],"when":"after","how":"prism","area":"green"}""")["surprise"]!;
        }
    }

    [Fact]
    public void P13_turning_one_screw_moves_the_other_side_and_the_pull_is_learned()
    {
        var pipe = new Piped();
        var before = Height(pipe)["coupling"]!["right"]!;
        // The left screw alone: the right side follows by 0.3 of its move.
        double left = 5, right = 5;
        Gauge(pipe, left, right);
        for (var i = 0; i < 4; i++)
        {
            (left, right) = (left + (1.25 * 0.4), right + (0.3 * 1.25 * 0.4));
            pipe.Say("""{"kind":"screw","leftTurns":0.4}""", Lock);
            Gauge(pipe, left, right);
        }
        var after = Height(pipe)["coupling"]!["right"]!;
        Assert.Equal(0.3, (double)after["mean"]!, 0.05);
        Assert.True((double)after["sd"]! < 0.6 * (double)before["sd"]!, after.ToJsonString());
    }

    [Fact]
    public void P13_going_round_one_side_at_a_time_takes_several_rounds_and_the_advice_fewer()
    {
        // A stiff pull of 0.5, no scatter, slack taken up: what is left to see is the coupling alone.
        int byHand = RoundsOneSideAtATime(), advised = RoundsAdvised();
        Assert.True(byHand >= 3, $"{byHand} rounds by hand");
        Assert.True(advised < byHand, $"{advised} rounds as advised, {byHand} by hand");

        static int RoundsOneSideAtATime()
        {
            double left = 4, right = 6.5;
            var rounds = 0;
            while (Math.Abs(left - 6) > 0.05 || Math.Abs(right - 6) > 0.05)
            {
                rounds++;
                var l = (6 - left) / 1.25;
                (left, right) = (left + (1.25 * l), right + (0.5 * 1.25 * l));
                var r = (6 - right) / 1.25;
                (left, right) = (left + (0.5 * 1.25 * r), right + (1.25 * r));
            }
            return rounds;
        }

        static int RoundsAdvised()
        {
            var pipe = new Piped();
            pipe.Say("""{"kind":"unit","unit":"u","screwMmPerTurn":1.25,"priors":{"pullShare":[0.5,0.02],"lostTurns":[0.001,0.0005],"gaugeSdMm":[0.01,0.001]}}""");
            double left = 4, right = 6.5;
            var rounds = 0;
            for (var steps = 0; steps < 30; steps++)
            {
                var next = pipe.Next(""","aim":{"benchMm":6}""");
                switch ((string)next["do"]!)
                {
                    case "gauge":
                        Gauge(pipe, left, right);
                        break;
                    case "lock":
                        pipe.Say(Lock);
                        break;
                    case "screw":
                        double l = (double)next["leftTurns"]!, r = (double)next["rightTurns"]!;
                        rounds++;
                        (left, right) = (left + (1.25 * l) + (0.5 * 1.25 * r), right + (1.25 * r) + (0.5 * 1.25 * l));
                        pipe.Say(FormattableString.Invariant($$"""{"kind":"screw","leftTurns":{{l}},"rightTurns":{{r}}}"""));
                        break;
                    default:
                        Assert.InRange(left, 5.95, 6.05);
                        Assert.InRange(right, 5.95, 6.05);
                        return rounds;
                }
            }
            throw new InvalidOperationException("never set");
        }
    }

    [Fact]
    public void P14_a_gauge_hooked_on_the_bedknife_can_pull_it()
    {
        var pipe = Good();
        var before = pipe.Steel();
        Gauge(pipe, 5, 5);
        var after = pipe.Steel();
        foreach (var end in (string[])["left", "right"])
        {
            Assert.True(Piped.Sd(after, "clearanceUm", end) > Piped.Sd(before, "clearanceUm", end) + 0.5, $"{end}: {Piped.Sd(before, "clearanceUm", end)} then {Piped.Sd(after, "clearanceUm", end)}");
            Assert.Equal(Piped.Mean(before, "clearanceUm", end), Piped.Mean(after, "clearanceUm", end), 0.5);
        }
        // A check of the nip follows, and says why; once it is made, nothing of it is left.
        var next = pipe.Next();
        Assert.Contains((string)next["do"]!, (string[])["contact", "paper-cut", "paper-drag"]);
        pipe.Say("""{"kind":"contact","left":"none","right":"none"}""");
        Assert.DoesNotContain("height was set", pipe.Next().ToJsonString(), StringComparison.Ordinal);
    }

    [Fact]
    public void P14_the_next_step_of_a_sharp_and_well_set_unit_names_the_gauge()
    {
        var pipe = Good();
        Assert.Equal("mow", (string)pipe.Next()["do"]!);
        Gauge(pipe, 5, 5);
        var next = pipe.Next();
        Assert.Equal("contact", (string)next["do"]!);
        Assert.Contains(next["why"]!.AsArray(), w => ((string)w!).Contains("height was set or read", StringComparison.Ordinal));
    }

    [Fact]
    public void P14_one_sitting_with_the_gauge_is_one_disturbance()
    {
        Piped once = Good(), often = Good();
        Gauge(once, 5, 5);
        for (var i = 0; i < 5; i++) Gauge(often, 5, 5);
        Assert.Equal(Piped.Sd(once.Steel(), "clearanceUm", "left"), Piped.Sd(often.Steel(), "clearanceUm", "left"), 1e-6);
    }

    [Fact]
    public void P14_what_a_gauge_moves_is_learned_from_the_checks_after_it()
    {
        Assert.True(Learned(moves: false) < 0.95, "felt alike before and after");
        Assert.True(Learned(moves: true) > 1.2, "a light touch that is gone each time");

        // Felt light, gauged, felt again: as before, or nothing where it was gauged and so brought in by two clicks.
        static double Learned(bool moves)
        {
            const string light = """{"kind":"contact","left":"light","right":"light"}""";
            var pipe = Good("light");
            var start = (double)pipe.Steel()["heightShiftUm"]!;
            for (var i = 0; i < 12; i++)
            {
                Gauge(pipe, 5, 5);
                if (moves) pipe.Say("""{"kind":"contact","left":"none","right":"none"}""", """{"kind":"feeler","left":{"goUm":30},"right":{"goUm":30}}""", """{"kind":"clicks","left":2,"right":2}""");
                pipe.Say(light);
            }
            Gauge(pipe, 5, 5);
            return (double)pipe.Steel()["heightShiftUm"]! / start;
        }
    }

    private static Piped Good(string felt = "none")
    {
        var pipe = new Piped();
        pipe.Say("""{"kind":"unit","unit":"u","clickUm":19,"priors":{"clearanceUm":[12,4],"edgeUm":[3,1],"bowUm":[0,2]}}""",
            """{"kind":"fit","playLeft":"none","playRight":"none","knifeScrews":"tight","adjusters":"free","blades":"straight"}""",
            """{"kind":"strip","um":80,"sdUm":3}""",
            $$"""{"kind":"contact","left":"{{felt}}","right":"{{felt}}"}""", """{"kind":"paper-cut","left":"cuts","centre":"cuts","right":"cuts"}""");
        return pipe;
    }

    private static JsonNode Height(Piped pipe) => pipe.Say("""{"ask":"height"}""")["height"]!;

    private static void Gauge(Piped pipe, double left, double right) =>
        pipe.Say($$"""{"kind":"gauge","leftMm":{{left.ToString("0.000", CultureInfo.InvariantCulture)}},"rightMm":{{right.ToString("0.000", CultureInfo.InvariantCulture)}}}""");
}
