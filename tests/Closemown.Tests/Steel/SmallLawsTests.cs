using Closemown.Steel;
using Closemown.Tests.Entries;
using CsCheck;
using Xunit;

namespace Closemown.Tests.Steel;

/// <summary>Hours of a mowing, the bite of a lap, the wear of pressing: their laws and limits.</summary>
public sealed class SmallLawsTests
{
    private static double Hours(string fields, double widthMm = 510) =>
        MowingHours.Of(Lines.Entry($$"""{"kind":"mow",{{fields}}}""", 1), new UnitDescription { Name = "u", WidthMm = widthMm });

    [Fact]
    public void Told_hours_are_taken_as_told() => Assert.Equal(0.75, Hours("\"hours\":0.75,\"areaM2\":500"));

    [Fact]
    public void Hours_from_an_area_are_its_size_by_the_useful_width_and_a_walking_pace() =>
        // 1800 m² at 0.9 of 500 mm and 4 km/h: 1800 / (0.45 · 4000) = 1 h. Pace and overlap are common practice, no source.
        Assert.Equal(1, Hours("\"areaM2\":1800", 500), 12);

    [Fact]
    public void Two_passes_take_twice_as_long() => Assert.Equal(2 * Hours("\"areaM2\":300"), Hours("\"areaM2\":300,\"passes\":2"), 12);

    [Fact]
    public void Twice_the_width_takes_half_as_long() => Assert.Equal(Hours("\"areaM2\":300", 400) / 2, Hours("\"areaM2\":300", 800), 12);

    [Fact]
    public void A_lap_bites_fully_where_the_pair_presses_and_hardly_where_it_stands_wide()
    {
        Assert.InRange(LapBite.At(-30), 0.99, 1);
        Assert.InRange(LapBite.At(0), 0.9, 1);
        Assert.InRange(LapBite.At(60), 0, 0.01);
    }

    [Fact]
    public void A_wider_gap_never_bites_more()
    {
        Gen.Select(Gen.Double[-100, 200], Gen.Double[0.01, 50]).Sample((gap, more) => Assert.True(LapBite.At(gap + more) <= LapBite.At(gap)));
    }

    [Fact]
    public void A_bite_known_exactly_is_the_bite_and_an_unknown_gap_draws_it_towards_a_half()
    {
        Gen.Select(Gen.Double[-100, 200], Gen.Double[0, 3000]).Sample((gap, variance) =>
        {
            Assert.Equal(LapBite.At(gap), LapBite.Expected(gap, 0), 12);
            Assert.True(Math.Abs(LapBite.Expected(gap, variance) - 0.5) <= Math.Abs(LapBite.At(gap) - 0.5) + 1e-12);
        });
    }

    [Fact]
    public void The_expected_bite_is_the_mean_of_the_bite_over_the_gap()
    {
        // Independent: the mean over the gap by a fine rectangle rule.
        foreach (var (gap, sd) in ((double, double)[])[(10, 5), (24, 20), (60, 40), (-20, 15)])
        {
            double sum = 0, weight = 0;
            for (var z = -8.0; z <= 8; z += 0.01)
            {
                var w = Math.Exp(-z * z / 2);
                sum += w * LapBite.At(gap + (sd * z));
                weight += w;
            }
            Assert.Equal(sum / weight, LapBite.Expected(gap, sd * sd), 9);
        }
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    [InlineData(null)]
    public void One_half_life_leaves_half_and_two_leave_a_quarter(bool? relief)
    {
        var t = LapBite.HalfLifeMinutes(relief);
        Assert.Equal(0.5, LapBite.Leaves(t, 1, relief), 12);
        Assert.Equal(0.25, LapBite.Leaves(2 * t, 1, relief), 12);
        Assert.Equal(0.5, LapBite.Leaves(2 * t, 0.5, relief), 12);
        Assert.Equal(1, LapBite.Leaves(t, 0, relief));
        Assert.Equal(1, LapBite.Leaves(0, 1, relief));
    }

    [Fact]
    public void A_wide_pair_does_not_press_and_a_pressed_one_presses_by_its_depth()
    {
        Assert.Equal(0, Pressing.ExpectedUm(40, 25), 9);
        Assert.Equal(40, Pressing.ExpectedUm(-40, 25), 9);
        // E max(0, −c) at mean 0 is sd/√(2π), the mean of half a normal distribution halved.
        Assert.Equal(10 / Math.Sqrt(2 * Math.PI), Pressing.ExpectedUm(0, 100), 12);
    }

    [Fact]
    public void Pressing_is_never_negative_falls_with_the_clearance_and_rises_with_its_spread()
    {
        Gen.Select(Gen.Double[-100, 150], Gen.Double[0, 2000], Gen.Double[0.01, 30]).Sample((c, v, more) =>
        {
            var depth = Pressing.ExpectedUm(c, v);
            Assert.True(depth >= Math.Max(0, -c) - 1e-9);
            Assert.True(Pressing.ExpectedUm(c + more, v) <= depth + 1e-9);
            Assert.True(Pressing.ExpectedUm(c, v + more) >= depth - 1e-9);
        });
    }

    [Fact]
    public void Pressing_wears_open_at_most_by_its_depth_and_more_with_hours()
    {
        Gen.Select(Gen.Double[0, 60], Gen.Double[0, 20]).Sample((depth, hours) =>
        {
            Assert.InRange(Pressing.Opens(depth, hours), 0, depth);
            Assert.True(Pressing.Opens(depth, hours + 1) >= Pressing.Opens(depth, hours));
            Assert.True(Pressing.Blunts(depth, hours) >= 0);
        });
        Assert.Equal(0, Pressing.Opens(0, 3));
        Assert.Equal(0, Pressing.Blunts(0, 3));
        Assert.Equal(2 * Pressing.Blunts(5, 1), Pressing.Blunts(5, 2), 12);
    }
}
