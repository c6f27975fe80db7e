using Closemown.Quantities;
using Xunit;

namespace Closemown.Tests.Quantities;

/// <summary>Chances, gaps and turf figures as they are said.</summary>
public sealed class SaidWordsTests
{
    [Theory]
    [InlineData(1.0, "almost sure, 99 in 100")]
    [InlineData(0.97, "almost sure, 97 in 100")]
    [InlineData(0.85, "very likely, 85 in 100")]
    [InlineData(0.72, "likely, 72 in 100")]
    [InlineData(0.5, "about even, 50 in 100")]
    [InlineData(0.3, "unlikely, 30 in 100")]
    [InlineData(0.1, "very unlikely, 10 in 100")]
    [InlineData(0.0, "hardly likely, less than 1 in 100")]
    public void A_chance_has_a_word_and_a_number_that_is_never_certain(double p, string said) => Assert.Equal(said, Chances.Both(p));

    [Theory]
    [InlineData(37.4, "35 µm", "1.4 thou", "3.5 hundredths mm")]
    [InlineData(38.0, "40 µm", "1.4 thou", "4 hundredths mm")]
    [InlineData(1.2, "0 µm", "0 thou", "0 hundredths mm")]
    [InlineData(-8, "touching", "touching", "touching")]
    [InlineData(-40, "touching hard", "touching hard", "touching hard")]
    public void A_gap_is_said_to_what_a_hand_can_set_and_below_nothing_as_a_touch(double um, string micrometres, string thou, string hundredths) =>
        Assert.Equal([micrometres, thou, hundredths], new[] { WritingStyle.Plain, WritingStyle.American, WritingStyle.British }.Select(s => LengthPrinting.SaidGap(um, s)));

    [Fact]
    public void A_spread_is_never_nothing() => Assert.Equal(["5 µm", "0.2 thou"], [LengthPrinting.SaidSpread(0.7, WritingStyle.Plain), LengthPrinting.SaidSpread(0.7, WritingStyle.American)]);

    [Theory]
    [InlineData(4.83, "4.85 mm")]
    [InlineData(4.82, "4.8 mm")]
    public void A_height_is_said_to_a_twentieth_of_a_millimetre(double mm, string said) =>
        Assert.Equal(said, Length.Print(LengthPrinting.HandyHeight(mm, WritingStyle.Plain), LengthUnit.Mm, WritingStyle.Plain));

    [Fact]
    public void American_style_is_whole_and_others_are_metric()
    {
        Assert.Equal(["1292 sq ft", "7.9 ft", "68 °F", "0.2 in", "0.31 lb/1000 sq ft", "7 mph", "0.2 lb/sq ft"], All(WritingStyle.American));
        Assert.Equal(["120 m²", "2.4 m", "20 °C", "5 mm", "1.5 g/m²", "3 m/s", "1 kg/m²"], All(WritingStyle.British));
        Assert.Equal(All(WritingStyle.British), All(WritingStyle.Plain));

        static string[] All(WritingStyle s) => [TurfPrinting.Ground(120, s), TurfPrinting.Distance(2.4, s), TurfPrinting.Warmth(20, s), TurfPrinting.Water(5, s), TurfPrinting.Feed(1.5, s), TurfPrinting.Wind(3, s), TurfPrinting.Dressing(1, s)];
    }

    [Fact]
    public void Us_words_with_inches_have_feet_and_pounds_and_with_millimetres_have_not()
    {
        Assert.Equal(TurfUnits.American, new WritingStyle { Height = HeightUnit.InchDecimal }.Turf);
        Assert.Equal(TurfUnits.Metric, new WritingStyle { Height = HeightUnit.InchDecimal, Words = Wording.UK }.Turf);
        Assert.Equal(TurfUnits.Metric, new WritingStyle().Turf);
    }
}
