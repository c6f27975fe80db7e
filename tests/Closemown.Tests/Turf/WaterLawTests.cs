using Closemown.Turf;
using CsCheck;
using Xunit;

namespace Closemown.Tests.Turf;

/// <summary>The root zone keeps account of every millimetre; cans are judged whatever their unit and order.</summary>
public sealed class WaterLawTests
{
    private static readonly Gen<(double Total, double Fraction, double Depletion, double Demand, double Water)> Days =
        Gen.Select(Gen.Double[3, 40], Gen.Double[0.1, 0.8], Gen.Double[0, 1], Gen.Double[0, 12], Gen.Double[0, 60], Gen.Bool)
            .Select((total, p, share, demand, water, dry) => (total, p, share * total, demand, dry ? 0 : water));

    [Fact]
    public void Water_given_is_water_evaporated_drained_or_kept() => Days.Sample(d =>
    {
        var day = WaterBalance.Day(d.Total, d.Fraction, d.Depletion, d.Demand, d.Water);
        Assert.Equal(d.Water, day.EvaporatedMm + day.DrainedMm + d.Depletion - day.DepletionMm, 1e-9);
        Assert.InRange(day.DepletionMm, 0, d.Total);
        Assert.InRange(day.Ks, 0, 1);
        Assert.InRange(day.EvaporatedMm, 0, d.Demand);
        Assert.True(day.DrainedMm >= 0 && (day.DrainedMm == 0 || day.DepletionMm == 0), "only a full zone drains");
    });

    [Fact]
    public void A_drier_zone_gives_less() => Gen.Select(Days, Gen.Double[0, 1]).Sample((d, share) =>
        Assert.True(WaterStress.Ks(d.Total, d.Fraction, Math.Min(d.Total, d.Depletion + (share * (d.Total - d.Depletion)))) <= WaterStress.Ks(d.Total, d.Fraction, d.Depletion)));

    [Fact]
    public void Stress_begins_where_the_readily_available_water_ends_and_is_whole_at_wilting()
    {
        var zone = new RootZone(0.16, 0.04, 120);
        Assert.Equal(1, WaterStress.Ks(zone.TotalMm, 0.4, zone.ReadyMm(0.4)));
        Assert.True(WaterStress.Ks(zone.TotalMm, 0.4, zone.ReadyMm(0.4) + 0.01) < 1);
        Assert.Equal(0, WaterStress.Ks(zone.TotalMm, 0.4, zone.TotalMm));
        Assert.Equal(0.04, zone.WaterAt(zone.TotalMm), 1e-12);
    }

    [Fact]
    public void Without_rain_a_zone_dries_to_wilting_and_no_further()
    {
        double depletion = 0;
        for (var i = 0; i < 200; i++)
        {
            var next = WaterBalance.Day(14.4, 0.4, depletion, 5, 0).DepletionMm;
            Assert.True(next >= depletion);
            depletion = next;
        }
        Assert.Equal(14.4, depletion, 1e-6);
    }

    [Fact]
    public void A_dull_day_lets_more_water_go_before_stress() => Gen.Select(Gen.Double[0, 12], Gen.Double[0, 12]).Sample((a, b) =>
        Assert.True(DepletionFraction.Adjusted(0.4, Math.Min(a, b)) >= DepletionFraction.Adjusted(0.4, Math.Max(a, b))));

    [Fact]
    public void Uniformity_knows_neither_unit_nor_order() => Gen.Select(Gen.Double[0.1, 50].Array[4, 40], Gen.Double[0.1, 10]).Sample((cans, unit) =>
    {
        double[] other = [.. cans.Reverse().Select(x => unit * x)];
        Assert.Equal(CatchCans.LowQuarter(cans), CatchCans.LowQuarter(other), 1e-9);
        Assert.Equal(CatchCans.Christiansen(cans), CatchCans.Christiansen(other), 1e-9);
        Assert.InRange(CatchCans.LowQuarter(cans), 0, 1 + 1e-12);
        Assert.True(CatchCans.Christiansen(cans) <= 1 + 1e-12);
    });

    [Fact]
    public void A_quarter_that_is_no_whole_number_is_rounded_down() => Assert.Equal(1 / ((1 + 2 + 3 + 4 + 5 + 6 + 7) / 7.0), CatchCans.LowQuarter([7, 6, 5, 4, 3, 2, 1]), 1e-12);
}
