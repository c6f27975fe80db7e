using Closemown.Turf;
using CsCheck;
using Xunit;

namespace Closemown.Tests.Turf;

/// <summary>Laws of degree days, growth potential and the regulator's clock.</summary>
public sealed class DegreeDayLawTests
{
    private static readonly Gen<(double Low, double High, double Base)> Day =
        Gen.Select(Gen.Double[-10, 30], Gen.Double[0, 20], Gen.Double[-5, 20]).Select((low, span, b) => (low, low + span, b));

    // All four mean the same bent line, max(0, t − base), over a day: at its middle, evenly, along a sine, at its ends. The wider the spread the more it gives.
    [Fact]
    public void The_ways_come_in_order_mean_triangle_sine_cut() => Day.Sample(d =>
    {
        double[] ways =
        [
            DegreeDays.Mean(d.Low, d.High, d.Base), DegreeDays.Triangle(d.Low, d.High, d.Base), DegreeDays.Sine(d.Low, d.High, d.Base), DegreeDays.Capped(d.Low, d.High, d.Base),
        ];
        for (var i = 1; i < ways.Length; i++) Assert.True(ways[i] >= ways[i - 1] - 1e-12, $"{d}: {string.Join(", ", ways)}");
    });

    [Fact]
    public void On_a_day_wholly_above_the_base_all_ways_agree() => Gen.Select(Gen.Double[10, 20], Gen.Double[0, 15]).Sample((low, span) =>
    {
        var expected = low + (span / 2) - 8;
        Assert.Equal(expected, DegreeDays.Mean(low, low + span, 8), 1e-12);
        Assert.Equal(expected, DegreeDays.Capped(low, low + span, 8), 1e-12);
        Assert.Equal(expected, DegreeDays.Sine(low, low + span, 8), 1e-12);
        Assert.Equal(expected, DegreeDays.Triangle(low, low + span, 8), 1e-12);
    });

    [Fact]
    public void A_cap_never_adds_and_holds_the_day_below_cap_less_base() => Gen.Select(Day, Gen.Double[1, 25]).Sample((d, over) =>
    {
        var cap = d.Base + over;
        Assert.InRange(DegreeDays.Capped(d.Low, d.High, d.Base, cap), 0, Math.Min(over, DegreeDays.Capped(d.Low, d.High, d.Base)) + 1e-12);
        Assert.InRange(DegreeDays.Sine(d.Low, d.High, d.Base, cap), -1e-12, Math.Min(over, DegreeDays.Sine(d.Low, d.High, d.Base)) + 1e-12);
    });

    [Fact]
    public void The_sine_is_the_area_under_a_sine() => Gen.Select(Day, Gen.Double[1, 25]).Sample((d, over) =>
    {
        const int steps = 4000;
        double sum = 0, mean = (d.Low + d.High) / 2, amplitude = (d.High - d.Low) / 2;
        for (var i = 0; i < steps; i++) sum += Math.Clamp(mean + (amplitude * Math.Sin(2 * Math.PI * (i + 0.5) / steps)) - d.Base, 0, over);
        Assert.Equal(sum / steps, DegreeDays.Sine(d.Low, d.High, d.Base, d.Base + over), 1e-4);
    }, iter: 50);

    [Fact]
    public void A_base_that_all_but_touches_the_low_is_reckoned()
    {
        const double nearly = 7742e-18;
        Assert.Equal(1 / 57.0, DegreeDays.Sine(nearly - 1903e-33, (2 / 57.0) + nearly, nearly), 1e-9);
    }

    [Fact]
    public void Only_differences_count() => Gen.Select(Day, Gen.Double[-20, 20]).Sample((d, shift) =>
        Assert.Equal(DegreeDays.Sine(d.Low, d.High, d.Base), DegreeDays.Sine(d.Low + shift, d.High + shift, d.Base + shift), 1e-9));

    [Fact]
    public void Growth_potential_is_a_share_that_peaks_at_the_optimum_and_in_warm_grass_stays_there() => Gen.Select(Gen.Double[-20, 45], Gen.Double[-20, 45]).Sample((a, b) =>
    {
        Assert.InRange(GrowthPotential.Of(a, TurfGrass.Cool), 0, 1);
        double nearer = Math.Abs(a - 20) <= Math.Abs(b - 20) ? a : b, farther = nearer == a ? b : a;
        Assert.True(GrowthPotential.Of(nearer, TurfGrass.Cool) >= GrowthPotential.Of(farther, TurfGrass.Cool));
        Assert.True(GrowthPotential.Of(Math.Max(a, b), TurfGrass.Warm) >= GrowthPotential.Of(Math.Min(a, b), TurfGrass.Warm));
    });

    [Fact]
    public void Cold_drought_and_a_regulator_each_only_slow_growth() => Gen.Select(Gen.Double[0.1, 2], Gen.Double[0, 1], Gen.Double[0, 1]).Sample((full, potential, water) =>
    {
        var growth = LeafGrowth.MmPerDay(full, potential, water);
        Assert.InRange(growth, 0, full);
        Assert.True(growth <= LeafGrowth.MmPerDay(full, potential) && growth <= LeafGrowth.MmPerDay(full, 1, water));
        Assert.Equal(0.75 * growth, LeafGrowth.MmPerDay(full, potential, water, regulated: true), 1e-12);
    });

    [Fact]
    public void The_regulators_clock_only_runs_forward_and_stands_still_in_the_cold() => Gen.Select(Gen.Double[0, 250], Gen.Double[-10, 25], Gen.Double[0, 15]).Sample((sum, low, span) =>
    {
        var (after, due) = GrowthRegulator.CreepingBentgrass.After(sum, low, low + span);
        Assert.True(after >= sum);
        Assert.Equal(after >= 200, due);
        Assert.Equal(sum, GrowthRegulator.UltradwarfBermudagrass.After(sum, 2, 9).SumCDays);
    });
}
