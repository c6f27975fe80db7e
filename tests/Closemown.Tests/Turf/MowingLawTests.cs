using Closemown.Steel.Reckonings;
using Closemown.Turf;
using CsCheck;
using Xunit;

namespace Closemown.Tests.Turf;

/// <summary>Ball roll, the share that comes off, and what feeds.</summary>
public sealed class MowingLawTests
{
    [Fact]
    public void The_corrected_roll_lies_between_both_ways_and_below_their_mean() => Gen.Select(Gen.Double[0.5, 6], Gen.Double[0.5, 6]).Sample((up, down) =>
    {
        var level = GreenSpeed.Corrected(up, down);
        Assert.InRange(level, Math.Min(up, down) - 1e-12, Math.Max(up, down) + 1e-12);
        Assert.True(level <= ((up + down) / 2) + 1e-12);
        Assert.Equal(level, GreenSpeed.Corrected(down, up), 1e-12);
    });

    [Fact]
    public void The_height_of_the_rule_loses_just_its_share() => Gen.Select(Gen.Double[2, 30], Gen.Double[0, 0.9]).Sample((cut, share) =>
        Assert.Equal(share, ShareRemoved.Of(ThirdRule.CanopyMm(cut, share), cut), 1e-12));

    [Fact]
    public void A_soil_with_enough_needs_nothing_and_a_poor_one_more_than_the_turf_uses() => Gen.Select(Gen.Double[0.1, 5], Gen.Double[1, 50], Gen.Double[0, 100]).Sample((use, guideline, soil) =>
    {
        var need = SoilNeed.Of(use, guideline, soil);
        Assert.True(need >= 0);
        if (Math.Abs(soil - guideline) > 1e-9) Assert.Equal(soil < guideline, need > use);
        if (soil > guideline + use) Assert.Equal(0, need);
    });

    [Fact]
    public void The_guideline_is_marked_in_acid_soil() =>
        Assert.Equal([true, true, false], new double?[] { null, 6.5, 5 }.Select(ph => SoilGuideline.MgKg(SoilNutrient.Potassium, ph).InRange));

    [Fact]
    public void Published_heights_are_told_once_each_low_before_high()
    {
        Assert.All(MowingHeights.All, h => Assert.True(h.LowMm > 0 && h.LowMm <= h.HighMm && h.Source.Length > 0));
        Assert.Equal(MowingHeights.All.Count, MowingHeights.All.Select(h => h.What).Distinct().Count());
    }
}
