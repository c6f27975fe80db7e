using Xunit;
using static Closemown.Tests.Practice.HeightTold;

namespace Closemown.Tests.Practice;

/// <summary>Nuts that move the height, sides that do not follow, readings that do not fit. Common practice, no source.</summary>
public sealed class HeightNutsTests
{
    [Fact]
    public void P26_slackening_and_tightening_are_said_with_the_steps()
    {
        var pipe = new Piped();
        pipe.Say("""{"kind":"unit","unit":"u"}""", Gauge(4, 4));
        var turn = pipe.Aim(6);
        Assert.Equal("screw", turn.Do());
        Assert.StartsWith("Slacken both height nuts.", (string)turn["say"]!, StringComparison.Ordinal);
        Assert.Contains(turn["then"]!.AsArray(), t => t!.Do() == "lock" && ((string)t!["say"]!).Contains("holding each screw", StringComparison.Ordinal));
        pipe.Say(Screw(0.5, 0.5));
        // Still far off with slack nuts: it goes on, and nothing need be slackened.
        Assert.StartsWith("The nuts are still slack.", (string)pipe.Aim(6)["say"]!, StringComparison.Ordinal);
        pipe.Say(Screw((double)pipe.Aim(6)["leftTurns"]!, (double)pipe.Aim(6)["rightTurns"]!));
        var tighten = pipe.Aim(6);
        Assert.Equal("lock", tighten.Do());
        Assert.Contains("holding each screw", (string)tighten["say"]!, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.08, 0.08, 0.035)]
    [InlineData(0.15, 0.1, 0.035)]
    [InlineData(0.1, 0.1, 0.02)]
    [InlineData(0.2, 0.15, 0.035)]
    public void P26_what_the_nuts_lift_is_learned_from_two_tightenings_and_said(double leftLift, double rightLift, double gauge)
    {
        var pipe = Tightened(leftLift, rightLift, gauge);
        var shift = pipe.Height()["lockShiftMm"]!;
        Assert.InRange((double)shift["left"]!["mean"]!, 0.55 * leftLift, 1.1 * leftLift);
        Assert.InRange((double)shift["right"]!["mean"]!, 0.55 * rightLift, 1.1 * rightLift);

        var turn = pipe.Aim(6.5);
        Assert.Equal("screw", turn.Do());
        Assert.Contains("hold the screws", turn.Said(), StringComparison.Ordinal);
        Assert.Contains("lifts the left side by", turn.Said(), StringComparison.Ordinal);
        Assert.Contains("still slack the gauge should read about", turn.Said(), StringComparison.Ordinal);

        // Read with slack nuts at the height less what they take: tightened, not turned; at the height itself it is too high by what they take.
        double left = (double)shift["left"]!["mean"]!, right = (double)shift["right"]!["mean"]!;
        pipe.Say(Screw(0.5, 0.5), Gauge(6.5 - left, 6.5 - right));
        Assert.Equal("lock", pipe.Aim(6.5).Do());
        Assert.Equal(6.5, (double)pipe.Height()["benchMm"]!["left"]!["mean"]!, 0.07);
    }

    [Fact]
    public void P26_nuts_that_lift_nothing_are_not_spoken_of()
    {
        var turn = Tightened(0, 0, 0.02).Aim(6.5);
        Assert.DoesNotContain("Tightening the nuts lifts", turn.Said(), StringComparison.Ordinal);
        Assert.DoesNotContain("Tightening the nuts lowers", turn.Said(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("left", 0.4, "")]
    [InlineData("right", 0.4, "")]
    [InlineData("left", 0.6, ""","screwMmPerTurn":1.25""")]
    [InlineData("right", 0.8, ""","priors":{"gaugeSdMm":[0.02,0.005]}""")]
    public void P25_a_side_that_makes_less_than_half_twice_is_named_with_what_to_look_at(string side, double turns, string told)
    {
        var pipe = new Piped();
        pipe.Say($$"""{"kind":"unit","unit":"u"{{told}}}""", Gauge(4, 4), Gauge(4, 4));
        double bad = 4, good = 4;
        for (var move = 0; move < 2; move++)
        {
            Assert.Null(pipe.Height()["notFollowing"]);
            (bad, good) = (bad + (0.3 * 1.25 * turns), good + (1.25 * turns));
            pipe.Say(Screw(turns, turns), Nuts, side == "left" ? Gauge(bad, good) : Gauge(good, bad));
        }
        var lags = Assert.Single(pipe.Height()["notFollowing"]!.AsArray())!;
        Assert.Equal(side, (string)lags["side"]!);
        Assert.Equal(["lock nut", "thread", "bracket", "pin"], lags["look"]!.AsArray().Select(w => (string)w!));
        Assert.All(lags["moves"]!.AsArray(), m => Assert.True((double)m!["madeMm"]! < 0.5 * (double)m["turnedMm"]!, m.ToJsonString()));
        var next = pipe.Aim(8);
        Assert.StartsWith($"First look at the {side} side", (string)next["say"]!, StringComparison.Ordinal);
        foreach (var what in (string[])["lock nut", "thread", "bracket", "pin"]) Assert.Contains(what, (string)next["why"]![0]!, StringComparison.Ordinal);

        // Once it follows, nothing more is said.
        pipe.Say(Screw(turns, turns), Nuts, side == "left" ? Gauge(bad + (1.25 * turns), good + (1.25 * turns)) : Gauge(good + (1.25 * turns), bad + (1.25 * turns)));
        Assert.Null(pipe.Height()["notFollowing"]);
    }

    [Fact]
    public void P25_slack_on_a_change_of_direction_and_a_finer_thread_on_both_sides_are_no_fault()
    {
        var reversing = new Piped();
        reversing.Say("""{"kind":"unit","unit":"u"}""", Gauge(5, 5));
        foreach (var (turns, to) in ((double, double)[])[(0.3, 5.25), (-0.3, 5.07), (0.3, 5.25), (-0.3, 5.07)]) reversing.Say(Screw(turns, turns), Nuts, Gauge(to, to));
        Assert.Null(reversing.Height()["notFollowing"]);

        var finer = new Piped();
        finer.Say("""{"kind":"unit","unit":"u"}""", Gauge(5, 5));
        foreach (var to in (double[])[5.25, 5.5, 5.75]) finer.Say(Screw(0.6, 0.6), Nuts, Gauge(to, to));
        Assert.Null(finer.Height()["notFollowing"]);
    }

    [Theory]
    [InlineData(0.12)]
    [InlineData(0.3)]
    [InlineData(1.0)]
    public void One_odd_reading_does_not_undo_a_good_setting(double off)
    {
        foreach (var unit in (string[])["""{"kind":"unit","unit":"u"}""", """{"kind":"unit","unit":"u","screwMmPerTurn":1.25}""", """{"kind":"unit","unit":"u","priors":{"gaugeSdMm":[0.02,0.005]}}"""])
        {
            var pipe = new Piped();
            pipe.Say(unit, Gauge(5, 5), Gauge(5.01, 4.99), Gauge(4.99, 5), Gauge(5, 5.01));
            Assert.Equal("mow", pipe.Aim(5).Do());
            pipe.Say(Gauge(5 + off, 5));
            Assert.Equal("gauge", pipe.Aim(5).Do());
            pipe.Say(Gauge(5, 5), Gauge(5, 5));
            var next = pipe.Aim(5);
            Assert.True(next.Do() is "mow" or "gauge", next.ToJsonString());
            Assert.Equal(5, (double)pipe.Height()["benchMm"]!["left"]!["mean"]!, 0.04);
        }
    }

    [Fact]
    public void A_side_that_did_move_is_turned_once_a_second_reading_says_so()
    {
        var pipe = new Piped();
        pipe.Say("""{"kind":"unit","unit":"u"}""", Gauge(5, 5), Gauge(5.01, 4.99), Gauge(4.99, 5), Gauge(4.6, 5));
        Assert.Equal("gauge", pipe.Aim(5).Do());
        pipe.Say(Gauge(4.61, 5), Gauge(4.6, 5));
        Assert.Equal("screw", pipe.Aim(5).Do());
    }

    [Theory]
    [InlineData(0.02, 0.85)]
    [InlineData(0.035, 0.75)]
    [InlineData(0.05, 0.6)]
    public void Two_agreeing_readings_end_it_where_the_probability_asked_is_reached(double gauge, double probability)
    {
        var pipe = new Piped();
        pipe.Say(FormattableString.Invariant($$$"""{"kind":"unit","unit":"u","priors":{"gaugeSdMm":[{{{gauge}}},{{{gauge / 10}}}]}}"""), Gauge(5.01, 5), Gauge(4.99, 5));
        var next = pipe.Aim(5, probability);
        Assert.True((double)next["within"]! >= probability, next.ToJsonString());
        Assert.Equal("mow", next.Do());
    }

    /// <summary>A unit read with slack nuts and again with tight ones, twice; the left side is lifted by the one, the right by the other.</summary>
    private static Piped Tightened(double left, double right, double gauge)
    {
        var pipe = new Piped();
        pipe.Say(FormattableString.Invariant($$$"""{"kind":"unit","unit":"u","screwMmPerTurn":1.25,"priors":{"gaugeSdMm":[{{{gauge}}},0.005]}}"""));
        var at = 5.0;
        for (var i = 0; i < 2; i++)
        {
            pipe.Say(Screw(0.4, 0.4), Gauge(at, at, ""","locked":false"""), Nuts, Gauge(at + left, at + right));
            at += 0.4 * 1.25 * 1.15;
        }
        return pipe;
    }
}
