using Closemown.Quantities;
using Xunit;

namespace Closemown.Tests.Quantities;

/// <summary>Questions about implausible values. The ranges are assumptions of our own: common practice, no source.</summary>
public sealed class UnitSlipTests
{
    [Theory]
    [InlineData("mow", "hours", 20, "20 min", UnitSlipKind.MinuteOrHour)]
    [InlineData("gauge", "leftMm", 0.156, "3.96 mm", UnitSlipKind.InchOrMm)]
    [InlineData("strip", "um", 0.1, "100 µm", UnitSlipKind.UmOrMm)]
    [InlineData("strip", "um", 4, "102 µm", UnitSlipKind.UmOrThou)]
    [InlineData("canopy", "mm", 0.6, "15.2 mm", UnitSlipKind.InchOrMm)]
    [InlineData("weather", "tMaxC", 68, "20 °C", UnitSlipKind.FahrenheitOrCelsius)]
    [InlineData("area", "m2", 43560, "4047 m²", UnitSlipKind.SquareFootOrMetre)]
    [InlineData("lap", "minutes", 90, "1.5 min", UnitSlipKind.SecondOrMinute)]
    public void A_slip_is_questioned_and_the_meant_value_offered(string kind, string field, double value, string written, UnitSlipKind slip)
    {
        SlipQuestion? question = UnitSlip.Check(value, PlausibleRanges.Find(kind, field)!);
        Assert.NotNull(question);
        Assert.Equal((written, slip), (question.Candidates[0].Written, question.Candidates[0].Slip));
    }

    [Fact]
    public void A_question_reads_well_in_a_comma_style()
    {
        SlipQuestion? question = UnitSlip.Check(20, PlausibleRanges.Find("mow", "hours")!, WritingStyle.CommaMetric);
        Assert.Equal("The time of mowing is usually 0,01 to 12 h, and this is 20 h.", question!.Why);
        Assert.Equal("20 minutes, not hours: 0,333 h", Assert.Single(question.Candidates).Reading);
    }

    [Fact]
    public void What_no_slip_explains_is_asked_without_candidates()
    {
        SlipQuestion? question = UnitSlip.Check(90, PlausibleRanges.Find("unit", "blades")!);
        Assert.NotNull(question);
        Assert.Empty(question.Candidates);
        Assert.EndsWith("Is it really 90?", question.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void Turns_for_clicks_are_mentioned_but_no_value_is_made_up()
    {
        SlipQuestion? question = UnitSlip.Check(28, PlausibleRanges.Find("screw", "leftTurns")!);
        Assert.Contains("Turns and clicks", question!.Why, StringComparison.Ordinal);
        Assert.DoesNotContain(question.Candidates, c => c.Slip == UnitSlipKind.TurnsOrClicks);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void What_is_no_number_is_questioned(double value) =>
        Assert.NotNull(UnitSlip.Check(value, PlausibleRanges.Find("unit", "clickUm")!));

    [Fact]
    public void Every_range_takes_its_ends_and_questions_what_lies_outside()
    {
        Assert.All(PlausibleRanges.All.Values, range =>
        {
            Assert.True(range.Low < range.High);
            Assert.Null(UnitSlip.Check(range.Low, range));
            Assert.Null(UnitSlip.Check(range.High, range));
            double beyond = range.High + (range.High - range.Low);
            SlipQuestion? question = UnitSlip.Check(beyond, range);
            Assert.NotNull(question);
            Assert.All(question.Candidates, c => Assert.True(range.Contains(c.Value)));
        });
    }

    [Fact]
    public void A_field_without_a_range_takes_any_value() => Assert.Null(PlausibleRanges.Find("unit", "nothing"));
}
