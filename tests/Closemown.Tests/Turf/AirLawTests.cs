using Closemown.Turf;
using CsCheck;
using Xunit;

namespace Closemown.Tests.Turf;

/// <summary>Laws of moist air that hold whatever the numbers.</summary>
public sealed class AirLawTests
{
    private static readonly Gen<double> Temperature = Gen.Double[-20, 45], Humidity = Gen.Double[5, 99];

    [Fact]
    public void Warmer_air_holds_more_and_the_slope_is_the_curves_own() => Temperature.Sample(t =>
    {
        const double step = 1e-4;
        var slope = (SaturationVapourPressure.Kpa(t + step) - SaturationVapourPressure.Kpa(t - step)) / (2 * step);
        Assert.True(slope > 0);
        // 4098 is 17.27·237.3 rounded: 4098.17.
        Assert.Equal(slope, SaturationVapourPressure.SlopeKpaPerC(t), 1e-4 * slope);
    });

    [Fact]
    public void The_mean_pressure_of_a_day_is_never_below_the_pressure_of_its_mean() => Gen.Select(Temperature, Gen.Double[0, 25]).Sample((low, span) =>
        Assert.True(SaturationVapourPressure.MeanKpa(low, low + span) >= SaturationVapourPressure.Kpa(low + (span / 2)) - 1e-12));

    [Fact]
    public void The_dew_point_is_not_above_the_air_and_rises_with_humidity() => Gen.Select(Temperature, Humidity, Humidity).Sample((t, a, b) =>
    {
        Assert.True(DewPoint.C(t, a).Value <= t);
        Assert.True((DewPoint.C(t, a).Value <= DewPoint.C(t, b).Value) == (a <= b));
    });

    [Fact]
    public void Both_ways_to_the_dew_point_agree() => Gen.Select(Gen.Double[0, 45], Gen.Double[20, 100]).Sample((t, rh) =>
        Assert.Equal(DewPoint.C(t, rh).Value, DewPoint.FromVapourPressureC(SaturationVapourPressure.Kpa(t) * rh / 100), 0.15));

    [Fact]
    public void The_wet_bulb_lies_between_dew_point_and_air_as_closely_as_its_fit() => Gen.Select(Gen.Double[0, 45], Gen.Double[20, 99]).Sample((t, rh) =>
    {
        var wet = WetBulb.C(t, rh);
        Assert.True(wet.InRange);
        Assert.InRange(wet.Value, DewPoint.C(t, rh).Value - 1, t + 0.65);
    });

    // Psychrometer equation (FAO-56 eq. 15) against the fit: two ways that share no constant but the saturation curve.
    [Fact]
    public void The_wet_bulb_agrees_with_the_psychrometer() => Gen.Select(Gen.Double[5, 40], Gen.Double[30, 95]).Sample((t, rh) =>
    {
        double low = -30, high = t;
        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            var held = SaturationVapourPressure.Kpa(middle) - (AirPressure.PsychrometricKpaPerC(101.325) * (t - middle));
            if (held < SaturationVapourPressure.Kpa(t) * rh / 100) low = middle;
            else high = middle;
        }
        Assert.Equal(low, WetBulb.C(t, rh).Value, 1.0);
    });

    [Fact]
    public void Below_freezing_the_frost_point_lies_above_the_dew_point() => Gen.Double[0.05, 0.6].Sample(kpa =>
    {
        var frost = IceVapourPressure.FrostPointC(kpa);
        Assert.True(frost.InRange);
        Assert.True(frost.Value > DewPoint.FromVapourPressureC(kpa));
        Assert.Equal(kpa, IceVapourPressure.Kpa(frost.Value).Value, 1e-9);
    });

    [Fact]
    public void Wind_grows_with_height_and_stays_as_read_at_two_metres()
    {
        Assert.Equal(3, WindProfile.At2M(3, 2).Value);
        Gen.Select(Gen.Double[0, 20], Gen.Double[1, 10], Gen.Double[1, 10]).Sample((v, a, b) =>
            Assert.True((WindProfile.At2M(v, Math.Max(a, b)).Value <= WindProfile.At2M(v, Math.Min(a, b)).Value + 1e-3)));
    }

    [Fact]
    public void Air_thins_with_altitude() => Gen.Double[-400, 8000].Sample(z => Assert.True(AirPressure.Kpa(z + 100) < AirPressure.Kpa(z)));

    [Fact]
    public void A_longer_wave_reaches_deeper_into_the_soil_by_the_root_of_its_length() =>
        Assert.Equal(Math.Sqrt(365), SoilWarmth.DampingDepthM(5e-7, 365) / SoilWarmth.DampingDepthM(5e-7, 1), 1e-12);
}
