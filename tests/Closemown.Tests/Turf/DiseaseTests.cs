using Closemown.Turf;
using CsCheck;
using Xunit;

namespace Closemown.Tests.Turf;

/// <summary>Disease models answer the right way to each variable and say where they were not made for.</summary>
public sealed class DiseaseTests
{
    // What Woods 2018 reads from the published chart: below one half in moist cold, below one tenth in dry heat. With the two coefficients swapped the first would be 0.9998.
    [Fact]
    public void Dollar_spot_fits_the_published_chart_at_its_corners()
    {
        Assert.InRange(DollarSpot.Probability(10, 100).Value, 0.1, 0.5);
        Assert.InRange(DollarSpot.Probability(38, 20).Value, 0, 0.1);
    }

    [Fact]
    public void Dollar_spot_rises_with_warmth_and_with_humidity_and_a_degree_counts_for_more_than_a_per_cent() =>
        Gen.Select(Gen.Double[10, 35], Gen.Double[20, 99]).Sample((t, rh) =>
        {
            double now = DollarSpot.Probability(t, rh).Value, warmer = DollarSpot.Probability(t + 1, rh).Value, moister = DollarSpot.Probability(t, rh + 1).Value;
            Assert.True(now < moister && moister < warmer && warmer < 1);
        });

    [Theory]
    [InlineData(9.9, false)]
    [InlineData(10, true)]
    [InlineData(35, true)]
    [InlineData(35.1, false)]
    public void Dollar_spot_outside_10_to_35_degrees_is_reckoned_and_marked(double meanC, bool inRange)
    {
        var p = DollarSpot.Probability(meanC, 80);
        Assert.Equal(inRange, p.InRange);
        Assert.InRange(p.Value, 0.01, 0.99);
        if (!inRange) Assert.EndsWith("is outside 10 to 35 °C", p.Outside, StringComparison.Ordinal);
    }

    [Fact]
    public void Brown_patch_is_marked_where_its_parabola_turns()
    {
        Assert.True(BrownPatch.Index(90, 21).InRange);
        var hot = BrownPatch.Index(90, 26);
        Assert.False(hot.InRange);
        Assert.True(hot.Value < BrownPatch.Index(90, 21).Value);
    }

    [Theory]
    [InlineData(20, 31, 15)]
    [InlineData(21, 30, 15)]
    [InlineData(21, 31, 13.9)]
    public void Pythium_needs_all_three(double low, double high, double hours) => Assert.False(PythiumBlight.Favoured(low, high, hours));
}
