using Closemown.Turf;
using CsCheck;
using Xunit;

namespace Closemown.Tests.Turf;

/// <summary>How reference evapotranspiration answers to each reading.</summary>
public sealed class EvapotranspirationLawTests
{
    // Summer days of the middle latitudes, every reading taken, never dead calm.
    private static readonly Gen<ReferenceWeather> Summer =
        Gen.Select(Gen.Double[6, 20], Gen.Double[2, 18], Gen.Double[-5, 6], Gen.Double[0.5, 8], Gen.Double[6, 28], Gen.Double[30, 52], Gen.Int[120, 230], Gen.Double[0, 1500])
            .Select((low, span, dew, wind, radiation, latitude, day, altitude) => new ReferenceWeather
            {
                TMinC = low,
                TMaxC = low + span,
                DewC = dew,
                WindMs = wind,
                RadiationMjM2 = radiation,
                LatitudeDeg = latitude,
                DayOfYear = day,
                AltitudeM = altitude,
            });

    // Any day at all, with any reading missing.
    private static readonly Gen<ReferenceWeather> Any =
        Gen.Select(Gen.Double[-40, 40], Gen.Double[0, 20], Gen.Double[0, 100].Nullable(), Gen.Double[0, 30].Nullable(), Gen.Double[0, 24].Nullable(), Gen.Double[-90, 90], Gen.Int[1, 366])
            .Select((low, span, rh, wind, sun, latitude, day) => new ReferenceWeather
            {
                TMinC = low,
                TMaxC = low + span,
                RhMeanPct = rh,
                WindMs = wind,
                SunH = sun,
                LatitudeDeg = latitude,
                DayOfYear = day,
            });

    private static double Mm(ReferenceWeather w) => ReferenceEvapotranspiration.Of(w).Mm.Value;

    [Fact]
    public void It_is_a_number_and_never_below_nothing() => Any.Sample(w => Assert.InRange(Mm(w), 0, 60));

    [Fact]
    public void A_warmer_day_with_the_same_vapour_evaporates_more() => Gen.Select(Summer, Gen.Double[0.1, 5]).Sample((w, warmer) =>
        Assert.True(Mm(w with { TMinC = w.TMinC + warmer, TMaxC = w.TMaxC + warmer }) > Mm(w)));

    [Fact]
    public void A_sunnier_day_evaporates_more() => Gen.Select(Summer, Gen.Double[0.1, 5]).Sample((w, more) =>
        Assert.True(Mm(w with { RadiationMjM2 = w.RadiationMjM2 + more }) > Mm(w)));

    [Fact]
    public void Drier_air_evaporates_more_in_wind() => Gen.Select(Summer, Gen.Double[1, 8]).Sample((w, drier) =>
    {
        var windy = w with { WindMs = w.WindMs + 3 };
        Assert.True(Mm(windy with { DewC = w.DewC - drier }) > Mm(windy));
    });

    [Fact]
    public void Wind_draws_one_way_only_and_upward_where_the_air_is_dry() => Summer.Sample(w =>
    {
        double calm = Mm(w with { WindMs = 0.5 }), breeze = Mm(w with { WindMs = 3 }), gale = Mm(w with { WindMs = 12 });
        Assert.True((calm <= breeze && breeze <= gale) || (calm >= breeze && breeze >= gale));
        var dry = w with { TMinC = w.TMinC + 14, TMaxC = w.TMaxC + 14, RadiationMjM2 = 12 };
        Assert.True(Mm(dry with { WindMs = 12 }) > Mm(dry with { WindMs = 0.5 }));
    });

    // FAO-56 gives eq. 3 to 6: the same equation with the resistances of its grass, before the constants are folded into 900 and 0.34.
    [Fact]
    public void It_agrees_with_the_equation_written_with_resistances() => Summer.Sample(w =>
    {
        double wind = w.WindMs!.Value + 0.5, mean = (w.TMinC + w.TMaxC) / 2, deficit = SaturationVapourPressure.MeanKpa(w.TMinC, w.TMaxC) - SaturationVapourPressure.Kpa(w.DewC!.Value);
        double pressure = AirPressure.Kpa(w.AltitudeM), net = 0.6 * w.RadiationMjM2!.Value, slope = SaturationVapourPressure.SlopeKpaPerC(mean);
        double gamma = 1.013e-3 * pressure / (0.622 * 2.45), heat = 86400 * gamma * 0.622 * 2.45 / (1.01 * (mean + 273) * 0.287), air = 208 / wind;
        var expected = ((slope * net) + (heat * deficit / air)) / (slope + (gamma * (1 + (70 / air)))) / 2.45;
        Assert.Equal(expected, PenmanMonteith.Mm(mean, net, 0, wind, deficit, AirPressure.PsychrometricKpaPerC(pressure)), 0.01 * expected);
    });

    [Fact]
    public void What_was_not_read_is_said()
    {
        var bare = new ReferenceWeather { TMinC = 10, TMaxC = 20, LatitudeDeg = 50, DayOfYear = 180 };
        Assert.Equal(Substitutes.RadiationFromTemperature | Substitutes.HumidityFromTemperature | Substitutes.Wind, ReferenceEvapotranspiration.Of(bare).Substitutes);
        Assert.Equal(Substitutes.RadiationFromSunshine | Substitutes.HumidityFromMean, ReferenceEvapotranspiration.Of(bare with { SunH = 8, RhMeanPct = 70, WindMs = 3 }).Substitutes);
        Assert.Equal(Substitutes.None, ReferenceEvapotranspiration.Of(bare with { RadiationMjM2 = 20, RhMinPct = 50, RhMaxPct = 90, WindMs = 3 }).Substitutes);
    }

    [Fact]
    public void The_better_reading_goes_first()
    {
        var all = new ReferenceWeather { TMinC = 10, TMaxC = 20, LatitudeDeg = 50, DayOfYear = 180, DewC = 9, RhMinPct = 50, RhMaxPct = 90, RhMeanPct = 70, SunH = 8, RadiationMjM2 = 20 };
        Assert.Equal(Mm(all with { RhMinPct = null, RhMaxPct = null, RhMeanPct = null, SunH = null }), Mm(all));
        Assert.Equal(Mm(all with { DewC = null, RhMeanPct = null }), Mm(all with { DewC = null }));
        Assert.NotEqual(Mm(all with { DewC = null, RhMaxPct = null }), Mm(all with { DewC = null }));
    }

    [Theory]
    [InlineData(-8, -2, 50, 20, null, "mean temperature -5")]
    [InlineData(5, 9, 60, 5, null, "latitude in winter 60")]
    [InlineData(10, 20, 50, 180, 20.0, "sunshine")]
    public void Outside_the_published_range_it_is_reckoned_and_marked(double low, double high, double latitude, int day, double? sun, string mark)
    {
        var weather = new ReferenceWeather { TMinC = low, TMaxC = high, LatitudeDeg = latitude, DayOfYear = day, SunH = sun };
        var et0 = ReferenceEvapotranspiration.Of(weather).Mm;
        Assert.False(et0.InRange);
        Assert.StartsWith(mark, et0.Outside, StringComparison.Ordinal);
        Assert.True(double.IsFinite(et0.Value));
    }

    [Fact]
    public void Every_reason_of_a_mark_is_kept()
    {
        var weather = new ReferenceWeather { TMinC = -9, TMaxC = -1, LatitudeDeg = 60, DayOfYear = 10, RadiationMjM2 = 40, WindMs = 3, WindHeightM = 30 };
        var outside = ReferenceEvapotranspiration.Of(weather).Mm.Outside!;
        Assert.Equal(4, outside.Split("; ").Length);
    }

    [Fact]
    public void A_day_without_a_span_of_temperature_gives_nothing_by_Hargreaves()
    {
        Assert.Equal(0, Hargreaves.Mm(15, 15, 50, 180).Value);
        Gen.Select(Gen.Double[-40, 30], Gen.Double[0, 20], Gen.Double[-90, 90], Gen.Int[1, 366]).Sample((low, span, latitude, day) =>
            Assert.InRange(Hargreaves.Mm(low, low + span, latitude, day).Value, 0, 20));
    }
}
