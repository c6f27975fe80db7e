using Closemown.Turf;
using CsCheck;
using Xunit;

namespace Closemown.Tests.Turf;

/// <summary>Colour from a photo.</summary>
public sealed class PhotoTests
{
    private static readonly Gen<(double R, double G, double B)> Pixel = Gen.Select(Gen.Int[0, 255], Gen.Int[0, 255], Gen.Int[0, 255]).Select((r, g, b) => ((double)r, (double)g, (double)b));

    [Fact]
    public void Within_its_hues_the_index_is_a_share_and_elsewhere_marked() => Pixel.Sample(p =>
    {
        var colour = HueSaturationBrightness.Of(p.R, p.G, p.B);
        var index = DarkGreenColour.Index(p.R, p.G, p.B);
        Assert.Equal(colour.HueDeg is >= 60 and <= 120, index.InRange);
        if (index.InRange) Assert.InRange(index.Value, 0, 1);
    });

    [Fact]
    public void The_same_green_darker_scores_higher() => Gen.Select(Gen.Double[0.3, 0.95], Gen.Double[10, 90]).Sample((darker, blue) =>
        Assert.True(DarkGreenColour.Index(darker * 100, darker * 160, darker * blue).Value > DarkGreenColour.Index(100, 160, blue).Value));

    [Theory]
    [InlineData(255, 0, 0, 0)]
    [InlineData(255, 255, 0, 60)]
    [InlineData(0, 255, 0, 120)]
    [InlineData(0, 255, 255, 180)]
    [InlineData(0, 0, 255, 240)]
    [InlineData(255, 0, 255, 300)]
    public void The_six_corners_of_the_colour_wheel_have_their_hues(double r, double g, double b, double hue) =>
        Assert.Equal(new(hue, 1, 1), HueSaturationBrightness.Of(r, g, b));

    [Fact]
    public void Grey_has_no_hue_and_is_no_turf()
    {
        Assert.False(GreenCover.ByHue(HueSaturationBrightness.Of(90, 90, 90)));
        Assert.False(GreenCover.ByRatios(0, 0, 0));
        Assert.True(GreenCover.ByHue(HueSaturationBrightness.Of(76, 115, 51)));
    }

    [Fact]
    public void Leaf_by_ratios_is_always_green_more_than_red_and_blue() => Pixel.Sample(p =>
        Assert.True(!GreenCover.ByRatios(p.R, p.G, p.B) || (p.G > p.R && p.G > p.B)));
}
