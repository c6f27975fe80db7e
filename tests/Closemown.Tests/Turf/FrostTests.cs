using Closemown.Turf;
using CsCheck;
using Xunit;

namespace Closemown.Tests.Turf;

/// <summary>Frost and ground frost. The drops of the grass below the air are common practice, no source.</summary>
public sealed class FrostTests
{
    [Theory]
    [InlineData(-0.5, NightSky.CloudyOrWindy, Frost.AirFrost)]
    [InlineData(0.5, NightSky.CloudyOrWindy, Frost.GroundFrost)]
    [InlineData(3, NightSky.CloudyOrWindy, Frost.None)]
    [InlineData(3, NightSky.ClearAndStill, Frost.GroundFrost)]
    [InlineData(3, NightSky.Unknown, Frost.GroundFrostPossible)]
    [InlineData(4, NightSky.ClearAndStill, Frost.None)]
    public void A_night_is_judged_by_its_lowest_temperature_and_sky(double tMinC, NightSky sky, Frost expected) => Assert.Equal(expected, FrostRisk.Of(tMinC, sky));

    [Fact]
    public void A_colder_or_clearer_night_is_never_judged_milder() => Gen.Select(Gen.Double[-10, 15], Gen.Double[0, 5], Gen.Enum<NightSky>()).Sample((t, colder, sky) =>
    {
        Assert.True(FrostRisk.Of(t - colder, sky) >= FrostRisk.Of(t, sky));
        Assert.True(FrostRisk.Of(t, NightSky.ClearAndStill) >= FrostRisk.Of(t, sky));
        Assert.True(FrostRisk.Of(t, NightSky.CloudyOrWindy) <= FrostRisk.Of(t, sky));
    });

    [Fact]
    public void Dry_air_freezes_the_leaf_without_rime()
    {
        var moist = SaturationVapourPressure.Kpa(0);
        Assert.True(FrostRisk.Rime(-2, moist));
        Assert.False(FrostRisk.Rime(-2, 0.3 * moist));
        Assert.False(FrostRisk.Rime(1, SaturationVapourPressure.Kpa(3)), "above freezing it is dew");
    }
}
