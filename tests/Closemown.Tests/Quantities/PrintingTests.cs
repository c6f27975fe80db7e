using Closemown.Quantities;
using Xunit;

namespace Closemown.Tests.Quantities;

/// <summary>What people read. The wordings are of our own.</summary>
public sealed class PrintingTests
{
    [Fact]
    public void A_gap_in_each_style()
    {
        Assert.Equal("18 µm", LengthPrinting.Gap(17.78, WritingStyle.Plain));
        Assert.Equal("0.7 thou", LengthPrinting.Gap(17.78, WritingStyle.American));
        Assert.Equal("1.8 hundredths mm", LengthPrinting.Gap(17.78, WritingStyle.British));
        Assert.Equal("1,8 hundredths mm", LengthPrinting.Gap(17.78, WritingStyle.CommaMetric));
        Assert.Equal("1 hundredth mm", LengthPrinting.Gap(10, WritingStyle.British));
        Assert.Equal("-12 µm", LengthPrinting.Gap(-12.4, WritingStyle.Plain));
    }

    [Theory]
    [InlineData(0, "0 in")]
    [InlineData(12.7, "1/2 in")]
    [InlineData(31.75, "1 1/4 in")]
    [InlineData(-31.75, "-1 1/4 in")]
    [InlineData(25.4, "1 in")]
    [InlineData(4, "just over 5/32 in")]
    public void A_height_in_fractions(double mm, string printed) => Assert.Equal(printed, LengthPrinting.InchFraction(mm));

    [Fact]
    public void The_finest_fraction_may_be_chosen()
    {
        Assert.Equal("just over 15/64 in", LengthPrinting.InchFraction(6, 64));
        Assert.Throws<ArgumentOutOfRangeException>(() => LengthPrinting.InchFraction(6, 10));
    }

    [Fact]
    public void Exactly_so_many_decimals_keep_their_zeros() =>
        Assert.Equal("4,00 mm", Length.Print(4, LengthUnit.Mm, WritingStyle.CommaMetric, 2));

    [Theory]
    [InlineData(1.5, "1½ clicks", "1½ clicks in")]
    [InlineData(1, "1 click", "1 click in")]
    [InlineData(-2, "-2 clicks", "2 clicks out")]
    [InlineData(0.5, "½ click", "½ click in")]
    [InlineData(0, "0 clicks", "0 clicks")]
    [InlineData(-0.1, "0 clicks", "0 clicks")]
    public void Clicks_with_and_without_direction(double count, string printed, string directed)
    {
        Assert.Equal(printed, Clicks.Print(count, WritingStyle.Plain));
        Assert.Equal(directed, Clicks.PrintDirected(count, WritingStyle.Plain));
    }

    [Theory]
    [InlineData(0.0125, "45 s")]
    [InlineData(0.025, "1 min 30 s")]
    [InlineData(1.0 / 3, "20 min")]
    [InlineData(4.0 / 3, "1 h 20 min")]
    [InlineData(2, "2 h")]
    [InlineData(0.9999, "1 h")]
    public void A_duration_by_the_clock(double hours, string printed) => Assert.Equal(printed, Duration.PrintClock(hours));

    [Theory]
    [InlineData(0.001, "less than a minute")]
    [InlineData(0.31, "about 20 minutes")]
    [InlineData(3.2, "about 3 hours")]
    [InlineData(24 * 5, "about 5 days")]
    [InlineData(24 * 20, "about 3 weeks")]
    [InlineData(24 * 120, "about 4 months")]
    [InlineData(24 * 700, "about 2 years")]
    public void A_duration_roughly(double hours, string printed) => Assert.Equal(printed, Duration.PrintAbout(hours));

    [Fact]
    public void Only_finite_numbers_are_printed() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Length.Print(double.NaN, LengthUnit.Mm, WritingStyle.Plain));
}
