using Closemown.Height;
using Xunit;

namespace Closemown.Tests.Height;

/// <summary>The choice of the next step in setting the height.</summary>
public sealed class HeightPlanTests
{
    private static HeightAdvice Next(HeightAim aim, params string[] bodies) => HeightPlan.Next(HeightBook.Belief(bodies), aim);

    [Theory]
    [InlineData(0.7, 5, 3.2)]
    [InlineData(0.85, 7, 5.5)]
    [InlineData(0.95, 10.5, 9)]
    public void Sixty_units_set_three_times_stand_as_often_within_tolerance_as_was_said(double asked, double readingsAtFirst, double readingsLater)
    {
        const int Units = 60;
        double[] wanted = [6.0, 5.5, 6.2];
        int came = 0, benchHeld = 0, threadHeld = 0, lostHeld = 0;
        var said = 0.0;
        var readings = new int[3];
        for (var seed = 1; seed <= Units; seed++)
        {
            var unit = new SimulatedUnit(seed);
            var track = new HeightTrack(HeightUnit.Of(HeightBook.Unit, []));
            for (var k = 0; k < wanted.Length; k++)
            {
                var aim = HeightAim.Of(wanted[k], probability: asked);
                var before = unit.Gauged;
                HeightAdvice next;
                HeightBelief belief;
                var steps = 0;
                while ((next = HeightPlan.Next(belief = HeightBelief.Of(track), aim)).Do != HeightDo.Done)
                {
                    Assert.True(++steps < 80, $"unit {seed} is not set after {steps} steps");
                    track.Add(unit.Do(next));
                }
                if (unit.OffMm(aim.Bench) <= aim.TolMm) came++;
                said += next.Within;
                readings[k] += unit.Gauged - before;
                for (var side = 0; side < 2; side++)
                {
                    var (bench, thread, lost) = unit.Truth(side);
                    benchHeld += Holds(belief.BenchMm(side), bench);
                    if (k < 2) continue;
                    threadHeld += Holds(belief.ScrewMmPerTurn(side), thread);
                    lostHeld += Holds(belief.LostMm(side), lost);
                }
                track.Add(unit.Mown());
            }
        }
        var all = Units * wanted.Length;
        // About three spreads of chance are left either side of what was said.
        Assert.True(said / all >= asked, $"said {said / all}");
        Assert.InRange((double)came / all, (said / all) - 0.09, (said / all) + 0.09);
        Assert.True(readings[0] <= readingsAtFirst * Units && readings[1] + readings[2] <= 2 * readingsLater * Units, $"readings {string.Join(", ", readings)}");
        // 90 in 100 was said of each; three spreads of chance at 360 and 120 that partly go together.
        Assert.InRange(benchHeld / 360.0, 0.84, 0.97);
        Assert.InRange(threadHeld / 120.0, 0.8, 1);
        Assert.InRange(lostHeld / 120.0, 0.8, 1);

        static int Holds(HeightEstimate e, double truth) => truth >= e.P05 && truth <= e.P95 ? 1 : 0;
    }

    [Fact]
    public void A_unit_nobody_read_is_read_first() => Assert.Equal((HeightDo.Gauge, HeightWhy.Unread), Pair(Next(HeightAim.Of(6))));

    [Fact]
    public void The_first_reading_inside_the_tolerance_does_not_end_it()
    {
        var first = Next(HeightAim.Of(6), HeightBook.Gauge(6, 6));
        Assert.Equal((HeightDo.Gauge, HeightWhy.NotSureYet), Pair(first));
        Assert.True(first.Within < 0.85);
        var often = Next(HeightAim.Of(6), [.. Enumerable.Repeat(HeightBook.Gauge(6, 6), 4)]);
        Assert.Equal((HeightDo.Done, HeightWhy.Sure), Pair(often));
    }

    [Fact]
    public void A_side_far_off_is_turned_without_reading_it_again()
    {
        var next = Next(HeightAim.Of(6), HeightBook.Gauge(5, 5.5));
        Assert.Equal((HeightDo.Screw, HeightWhy.Off), Pair(next));
        Assert.InRange(next.Turns.Left, 0.5, 1);
        Assert.True(next.Turns.Right < next.Turns.Left / 2, "the right side is half as far off, and the left one pulls it up besides");
        Assert.Equal([HeightDo.Lock, HeightDo.Gauge], next.Then);
        Assert.True(next.Left.Mean is > 5.7 and < 6.01, $"{next.Left}");
    }

    [Fact]
    public void A_side_that_stands_right_is_taken_back_by_what_the_other_will_pull_it_up()
    {
        var next = Next(HeightAim.Of(6), HeightBook.Gauge(5, 6));
        Assert.Equal((HeightDo.Screw, HeightWhy.DownToComeUp), Pair(next));
        Assert.True(next.Turns is { Left: 0, Right: < 0 }, $"{next.Turns}");
    }

    [Fact]
    public void It_comes_up_from_below_while_the_lost_motion_is_not_known()
    {
        string[] book = [HeightBook.Gauge(6.5, 6.5), HeightBook.Gauge(6.5, 6.5)];
        var down = Next(HeightAim.Of(6), book);
        Assert.Equal((HeightDo.Screw, HeightWhy.DownToComeUp), Pair(down));
        Assert.True(down.Turns is { Left: < -0.4, Right: < -0.4 }, $"{down.Turns}");
        var up = Next(HeightAim.Of(6), [.. book, HeightBook.Screw(down.Turns.Left, down.Turns.Right)]);
        Assert.Equal(HeightDo.Screw, up.Do);
        Assert.True(up.Turns is { Left: > 0, Right: > 0 }, $"{up.Turns}");
    }

    [Fact]
    public void It_goes_straight_down_where_the_lost_motion_is_known()
    {
        var next = Next(HeightAim.Of(6), """{"kind":"unit","screwMmPerTurn":1.25,"priors":{"lostTurns":[0.1,0.001],"screwMmPerTurn":[1.25,0.005]}}""",
            HeightBook.Screw(0.2, 0.2), HeightBook.Lock, HeightBook.Gauge(6.5, 6.5), HeightBook.Gauge(6.5, 6.5));
        Assert.Equal((HeightDo.Screw, HeightWhy.Off), Pair(next));
        // 0.5 mm at 1.25·1.15 mm a turn of both, and a tenth of a turn of slack.
        Assert.Equal(-(0.5 / (1.25 * 1.15)) - 0.1, next.Turns.Left, 0.02);
    }

    [Fact]
    public void Loose_nuts_are_tightened_before_anything_is_read() =>
        Assert.Equal((HeightDo.Lock, HeightWhy.NutsLoose), Pair(Next(HeightAim.Of(6), HeightBook.Gauge(5.9, 5.9), HeightBook.Screw(0.07, 0.07))));

    [Fact]
    public void An_odd_reading_is_read_again_before_a_screw_is_turned()
    {
        string[] book = [.. Enumerable.Repeat(HeightBook.Gauge(6, 6), 5), HeightBook.Gauge(6.6, 6)];
        Assert.Equal((HeightDo.Gauge, HeightWhy.OddReading), Pair(Next(HeightAim.Of(6), book)));
    }

    [Fact]
    public void Never_asked_to_turn_less_than_a_hand_can_set()
    {
        for (var mm = 5.9; mm < 6.1; mm += 0.005)
        {
            var next = Next(HeightAim.Of(6), [.. Enumerable.Repeat(HeightBook.Gauge(Math.Round(mm, 3), 6), 3)]);
            Assert.True(next.Turns.Left == 0 || Math.Abs(next.Turns.Left) >= HeightDefaults.SmallestTurn, $"{mm}: {next.Turns}");
        }
    }

    [Fact]
    public void A_knife_that_would_drag_is_told_before_the_turn()
    {
        string[] told = ["""{"kind":"unit","lipMm":2.5}""", HeightBook.Gauge(5, 5)];
        Assert.True(Next(HeightAim.Of(3), told).KnifeWouldDrag);
        Assert.False(Next(HeightAim.Of(5), told).KnifeWouldDrag);
        Assert.Null(Next(HeightAim.Of(3), HeightBook.Gauge(5, 5)).KnifeWouldDrag);
    }

    [Fact]
    public void An_aim_out_of_range_is_refused()
    {
        var belief = HeightBook.Belief(HeightBook.Gauge(5, 5));
        Assert.Throws<ArgumentOutOfRangeException>(() => HeightPlan.Next(belief, HeightAim.Of(0)));
        Assert.Throws<ArgumentOutOfRangeException>(() => HeightPlan.Next(belief, HeightAim.Of(5, tolMm: 0)));
        Assert.Throws<ArgumentOutOfRangeException>(() => HeightPlan.Next(belief, HeightAim.Of(5, probability: 1)));
    }

    private static (HeightDo, HeightWhy) Pair(HeightAdvice a) => (a.Do, a.Why);
}
