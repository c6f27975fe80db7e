using Closemown.Turf;
using CsCheck;
using Xunit;

namespace Closemown.Tests.Turf;

/// <summary>Laws of the sun that hold at every place and day.</summary>
public sealed class SunLawTests
{
    private static readonly Gen<int> Day = Gen.Int[1, 366];
    private static readonly Gen<double> Latitude = Gen.Double[-90, 90];

    [Fact]
    public void The_two_hemispheres_share_the_day() => Gen.Select(Latitude, Day).Sample((latitude, day) =>
        Assert.Equal(24, DayLength.Hours(latitude, day) + DayLength.Hours(-latitude, day), 1e-9));

    [Fact]
    public void At_the_equator_every_day_has_twelve_hours() => Day.Sample(day => Assert.Equal(12, DayLength.Hours(0, day), 1e-9));

    [Fact]
    public void Beyond_the_polar_circle_the_sun_stays_up_or_down()
    {
        Assert.Equal(24, DayLength.Hours(75, 172));
        Assert.Equal(0, DayLength.Hours(-75, 172));
        Assert.Equal(0, ExtraterrestrialRadiation.MjM2(-75, 172).Value);
    }

    [Fact]
    public void Radiation_at_the_top_of_the_air_is_a_number_from_nothing_to_the_polar_summer() => Gen.Select(Latitude, Day).Sample((latitude, day) =>
        Assert.InRange(ExtraterrestrialRadiation.MjM2(latitude, day).Value, 0, 50));

    [Fact]
    public void Only_winter_beyond_55_degrees_is_marked()
    {
        Assert.True(ExtraterrestrialRadiation.MjM2(57, 172).InRange);
        Assert.False(ExtraterrestrialRadiation.MjM2(57, 1).InRange);
        Assert.False(ExtraterrestrialRadiation.MjM2(-57, 172).InRange);
        Assert.True(ExtraterrestrialRadiation.MjM2(55, 1).InRange);
    }

    [Fact]
    public void More_sunshine_brings_more_radiation_up_to_a_cloudless_day() => Gen.Select(Gen.Double[5, 16], Gen.Double[0, 1], Gen.Double[0, 1]).Sample((day, a, b) =>
    {
        double Of(double share) => SolarRadiation.FromSunshineMjM2(share * day, day, 30).Value;
        Assert.True(Of(Math.Max(a, b)) >= Of(Math.Min(a, b)));
        Assert.True(Of(1) <= SolarRadiation.ClearSkyMjM2(0, 30) + 1e-12);
    });

    [Fact]
    public void Sunshine_longer_than_the_day_counts_as_all_of_it_and_is_marked()
    {
        var whole = SolarRadiation.FromSunshineMjM2(10, 10, 20);
        Assert.Equal(whole.Value, SolarRadiation.FromSunshineMjM2(13, 10, 20).Value);
        Assert.True(whole.InRange);
        Assert.False(SolarRadiation.FromSunshineMjM2(13, 10, 20).InRange);
        Assert.True(SolarRadiation.FromSunshineMjM2(10.2, 10, 20).InRange, "sunshine recorders see the sun's edge a little before its middle");
    }

    [Fact]
    public void Radiation_guessed_from_temperature_never_passes_a_cloudless_day() =>
        Gen.Select(Gen.Double[-5, 20], Gen.Double[0, 40], Gen.Double[0, 45], Gen.Double[0, 3000]).Sample((low, span, sky, altitude) =>
            Assert.InRange(SolarRadiation.FromTemperatureMjM2(low, low + span, sky, altitude, SolarRadiation.Coast), 0, SolarRadiation.ClearSkyMjM2(altitude, sky)));

    [Fact]
    public void Clouds_and_moist_air_keep_the_warmth_in() => Gen.Select(Gen.Double[0.3, 3], Gen.Double[0.3, 3], Gen.Double[5, 25], Gen.Double[5, 25]).Sample((ea, eb, ra, rb) =>
    {
        double Of(double vapour, double solar) => NetRadiation.LongWaveMjM2(10, 20, vapour, solar, 25);
        Assert.True(Of(Math.Max(ea, eb), ra) <= Of(Math.Min(ea, eb), ra));
        Assert.True(Of(ea, Math.Min(ra, rb)) <= Of(ea, Math.Max(ra, rb)));
        Assert.True(Of(ea, 60) == Of(ea, 25), "clearness is kept at 1");
    });
}
