using Closemown.Quantities;
using Xunit;

namespace Closemown.Tests.Quantities;

/// <summary>Facts of the trade about sizes. All: common practice, no source.</summary>
public sealed class PracticeTests
{
    private static readonly WritingStyle Plain = WritingStyle.Plain;

    [Fact]
    public void Five_thirtyseconds_is_just_under_4_mm()
    {
        double mm = Length.Parse("5/32 in", Plain).Mm;
        Assert.Equal(3.96875, mm);
        Assert.Equal("3.97 mm", Length.Print(mm, LengthUnit.Mm, Plain));
        Assert.Equal("just under 4 mm", LengthPrinting.NearRound(mm, LengthUnit.Mm, Plain));
        Assert.Equal("5/32 in", LengthPrinting.Height(mm, WritingStyle.American));
        Assert.Equal("0.156 in", Length.Print(mm, LengthUnit.Inch, Plain));
    }

    [Fact]
    public void The_next_step_is_seven_thirtyseconds()
    {
        double mm = Length.Parse("7/32\"", Plain).Mm;
        Assert.Equal(5.55625, mm);
        Assert.Equal("7/32 in", LengthPrinting.InchFraction(mm));
    }

    [Fact]
    public void Six_mm_is_just_under_a_quarter_inch()
    {
        double mm = Length.Parse("6 mm", Plain).Mm;
        Assert.Equal("just under 1/4 in", LengthPrinting.InchFraction(mm));
        Assert.Equal("0.236 in", Length.Print(mm, LengthUnit.Inch, Plain));
        Assert.Equal("0.23622 in", Length.Print(mm, LengthUnit.Inch, Plain, 5));
    }

    [Theory]
    [InlineData("0.001 in", 25.4, "25 µm")]
    [InlineData("0.002 in", 50.8, "51 µm")]
    public void What_matters_at_the_nip(string typed, double um, string printed)
    {
        Length gap = Length.Parse(typed, Plain);
        Assert.Equal(um, gap.Um);
        Assert.Equal(printed, LengthPrinting.Gap(gap.Um, Plain));
    }

    [Fact]
    public void A_click_of_seven_thou_is_questioned_and_seven_tenths_offered()
    {
        Length typed = Length.Parse("0.007 in", Plain);
        SlipQuestion? question = UnitSlip.Check(typed.Um, PlausibleRanges.Find("unit", "clickUm")!, Plain, typed.Unit);
        Assert.NotNull(question);
        SlipCandidate first = question.Candidates[0];
        Assert.Equal("0.0007 in", first.Written);
        Assert.Equal(17.78, first.Value, 1e-12);
        Assert.Contains("17.8 µm", first.Reading, StringComparison.Ordinal);
        Assert.Contains("0.001 to 0.002 in", question.Why, StringComparison.Ordinal);
        Assert.Equal(first.Value, Length.Parse(first.Written, Plain).Um, 1e-12);
    }

    [Fact]
    public void A_click_of_seven_tenths_of_a_thou_is_not_questioned() =>
        Assert.Null(UnitSlip.Check(Length.Parse("0.0007 in", Plain).Um, PlausibleRanges.Find("unit", "clickUm")!));
}
