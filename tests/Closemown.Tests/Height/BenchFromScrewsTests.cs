using Closemown.Height;
using CsCheck;
using Xunit;

namespace Closemown.Tests.Height;

/// <summary>Height screws to bench heights and back.</summary>
public sealed class BenchFromScrewsTests
{
    private static readonly RollerGeometry Even = new() { FrontMm = 60, RearMm = 60, SpanMm = 200, EdgeXMm = 100, EdgeYMm = -26 };

    private static readonly Gen<RollerGeometry> Units = Gen.Select(Gen.Double[45, 80], Gen.Double[45, 80], Gen.Double[150, 300], Gen.Double[0.3, 0.7], Gen.Double[0.5, 2], Gen.Double[210, 300], Gen.Bool)
        .Select((f, r, span, share, pitch, read, front) => new RollerGeometry
        {
            FrontMm = f,
            RearMm = r,
            SpanMm = span,
            EdgeXMm = share * span,
            EdgeYMm = 5 - ((f * (1 - share)) + (r * share)) / 2,      // about 5 mm above the plane
            BracketMmPerTurn = pitch,
            ReadAtMm = (-read, read),
            Screws = front ? ScrewedRoller.Front : ScrewedRoller.Rear,
        });

    private static readonly Gen<ScrewTurns> Moves = Gen.Select(Gen.Double[-1, 3], Gen.Double[-1, 3]).Select((l, r) => new ScrewTurns(l, r));

    [Fact]
    public void One_turn_left_moves_both_readings_as_in_the_worked_example()
    {
        var level = BenchFromScrews.Heights(Even, default);
        Assert.Equal(4, level.LeftMm, 1e-12);
        Assert.Equal(4, level.RightMm, 1e-12);
        var turned = BenchFromScrews.Heights(Even, new(1, 0));
        Assert.Equal(4.5696, turned.LeftMm, 0.0001);
        Assert.Equal(4.0558, turned.RightMm, 0.0005);
    }

    [Fact]
    public void Heights_to_turns_and_back_is_where_it_began()
    {
        Gen.Select(Units, Moves).Sample((g, turns) =>
        {
            var heights = BenchFromScrews.Heights(g, turns);
            if (Math.Min(heights.LeftMm, heights.RightMm) < 0.5) return;
            var back = BenchFromScrews.Turns(g, heights);
            Assert.Equal(turns.Left, back.Left, 1e-8);
            Assert.Equal(turns.Right, back.Right, 1e-8);
        });
    }

    [Fact]
    public void What_left_does_to_right_right_does_to_left()
    {
        Gen.Select(Units, Moves).Sample((g, t) =>
        {
            var (one, other) = (BenchFromScrews.Heights(g, t), BenchFromScrews.Heights(g, new(t.Right, t.Left)));
            Assert.Equal(one.LeftMm, other.RightMm, 1e-9);
            Assert.Equal(one.RightMm, other.LeftMm, 1e-9);
        });
    }

    [Fact]
    public void A_turn_up_raises_its_own_side_more_than_the_other()
    {
        Gen.Select(Units, Moves, Gen.Double[0.01, 1]).Sample((g, t, more) =>
        {
            var (before, after) = (BenchFromScrews.Heights(g, t), BenchFromScrews.Heights(g, t with { Left = t.Left + more }));
            var own = after.LeftMm - before.LeftMm;
            Assert.True(own > 0, $"raised by {own}");
            Assert.True(own > Math.Abs(after.RightMm - before.RightMm), "the other side moved more");
        });
    }

    [Fact]
    public void The_other_side_is_pulled_by_the_share_that_the_brackets_leave()
    {
        Units.Sample(g =>
        {
            var m = BenchFromScrews.Slopes(g, default);
            var (b, s) = (g.BracketAtMm.Right, g.ReadAtMm.Right);
            Assert.Equal((b - s) / (b + s), m.LeftByRight / m.LeftByLeft, 1e-5);
            Assert.Equal((b - s) / (b + s), m.RightByLeft / m.RightByRight, 1e-5);
        });
    }

    [Fact]
    public void From_one_setting_to_another_both_screws_are_solved_together()
    {
        // Raising the left reading alone by half a millimetre takes some down on the right screw, or the right would rise with it.
        var turns = BenchFromScrews.TurnsBetween(Even, new(4, 4), new(4.5, 4));
        Assert.True(turns.Left > 0.5 && turns.Right < 0, $"{turns}");
        var heights = BenchFromScrews.Heights(Even, turns);
        Assert.Equal(4.5, heights.LeftMm, 1e-9);
        Assert.Equal(4, heights.RightMm, 1e-9);
    }

    [Fact]
    public void A_screw_that_cannot_reach_is_named_before_it_is_turned()
    {
        var reach = ScrewReach.Of(Even, new(4, 4), new(6, 6), new(-1, 2, -1, 2));
        Assert.False(reach.Reaches);
        Assert.Equal(1.2, reach.LeftMissing, 0.05);
        Assert.Equal(reach.LeftMissing, reach.RightMissing, 1e-9);
        Assert.Equal(5.25, reach.Nearest.LeftMm, 0.05);
        Assert.True(ScrewReach.Of(Even, new(4, 4), new(5, 5), new(-1, 2, -1, 2)).Reaches);
        var (lowest, highest) = ScrewReach.Limits(Even, new(4, 4), new(-1, 2, -1, 2));
        Assert.Equal(reach.Nearest.LeftMm, highest.LeftMm, 1e-9);
        Assert.True(lowest.LeftMm < 4);
    }

    [Fact]
    public void The_geometry_comes_from_the_entries_once_all_of_it_is_told()
    {
        var first = HeightBook.Entries("""{"kind":"unit","rollerFrontMm":60,"rollerRearMm":64,"rollerSpanMm":210}""");
        Assert.Null(RollerGeometry.Of(first));
        var g = RollerGeometry.Of([.. first, .. HeightBook.Entries("""{"kind":"unit","edgeAtMm":[100,-26],"screwMmPerTurn":1.5,"screwLever":0.5,"adjusterAtMm":[-260,270]}""")])!;
        Assert.Equal((60, 64, 210, 100, -26, 0.75), (g.FrontMm, g.RearMm, g.SpanMm, g.EdgeXMm, g.EdgeYMm, g.BracketMmPerTurn));
        Assert.Equal((-260, 270), g.BracketAtMm);
    }

    [Fact]
    public void Brackets_or_readings_at_one_place_are_refused()
    {
        Assert.Throws<ArgumentException>(() => BenchFromScrews.Heights(Even with { BracketAtMm = (10, 10) }, default));
        Assert.Throws<ArgumentException>(() => BenchFromScrews.Turns(Even with { ReadAtMm = (10, 10) }, new(4, 4)));
    }
}
