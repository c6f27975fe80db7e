using Closemown.Height;
using CsCheck;
using Xunit;

namespace Closemown.Tests.Height;

/// <summary>Lowering in steps that never take too much of the leaf, and what the eye sees of unlike sides.</summary>
public sealed class StepDownTests
{
    [Fact]
    public void From_8_to_4_with_a_third_at_most_takes_two_mowings_of_29_in_100()
    {
        var rows = StepDown.Of(8, 4)!;
        Assert.Equal(2, rows.Count);
        Assert.Equal(8 / Math.Sqrt(2), rows[0].CutMm, 1e-6);
        Assert.All(rows, r => Assert.Equal(1 - (1 / Math.Sqrt(2)), r.ShareRemoved, 1e-6));
    }

    [Fact]
    public void Turf_low_enough_already_is_mown_once() => Assert.Equal([new StepDownRow(4.5, 4)], StepDown.Of(4.5, 4)!);

    [Fact]
    public void Growth_that_outruns_the_share_is_told() => Assert.Null(StepDown.Of(8, 4, 0.2, 2));

    [Fact]
    public void Never_more_than_the_share_each_step_alike_and_no_fewer_steps_would_do() =>
        Gen.Select(Gen.Double[3, 40], Gen.Double[2, 12], Gen.Double[0.1, 0.5], Gen.Double[0, 0.5]).Sample((canopy, cut, share, growth) =>
        {
            if (StepDown.Of(canopy, cut, share, growth) is not { } rows)
            {
                // It is never reached: the height that such mowing settles at lies above the wish.
                Assert.True(growth * (1 - share) / share > cut - 1e-6);
                return;
            }
            Assert.Equal(cut, rows[^1].CutMm, 1e-6);
            Assert.All(rows, r => Assert.True(r.ShareRemoved <= share + 1e-9));
            if (canopy <= cut) return;
            Assert.All(rows, r => Assert.Equal(rows[0].ShareRemoved, r.ShareRemoved, 1e-6));
            var stands = canopy;
            for (var i = 1; i < rows.Count; i++) stands = ((1 - share) * stands) + growth;
            Assert.True(rows.Count == 1 || stands - growth > cut, "one mowing less would have done");
        });

    [Theory]
    [InlineData(0, 1, 0.3, 0)]
    [InlineData(8, 0, 0.3, 0)]
    [InlineData(8, 4, 1, 0)]
    [InlineData(8, 4, 0.3, -1)]
    public void Numbers_out_of_range_are_refused(double canopy, double cut, double share, double growth) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => StepDown.Of(canopy, cut, share, growth));

    [Theory]
    [InlineData(0.10, 460, 510.0, 0.1109)]
    [InlineData(-0.10, 460, 510.0, 0.1109)]
    [InlineData(0.10, 460, null, 0.10)]
    public void A_difference_of_the_sides_reaches_to_the_edges_of_the_cut(double difference, double apart, double? width, double step) =>
        Assert.Equal(step, SideStep.Mm(difference, apart, width), 1e-4);

    [Fact]
    public void Less_than_a_tenth_is_not_seen()
    {
        Assert.Equal("nothing that an eye sees", SideStep.Seen(0.09));
        Assert.Contains("3 tenths", SideStep.Seen(0.31), StringComparison.Ordinal);
    }
}
