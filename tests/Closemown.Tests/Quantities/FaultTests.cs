using Closemown.Quantities;
using Xunit;

namespace Closemown.Tests.Quantities;

/// <summary>What a fault says, and where its caret stands.</summary>
public sealed class FaultTests
{
    private static readonly WritingStyle Plain = WritingStyle.Plain;

    [Theory]
    [InlineData("4,0 mm", " ^", "Write 4.0.")]
    [InlineData("1,300 mm", " ^", "1300 if thousands")]
    [InlineData("1.300.5 mm", "     ^", "thousands are written together")]
    [InlineData("4 milimeter", "  ^^^^^^^^^", "(mm)")]
    [InlineData("4 inchs", "  ^^^^^", "(in)")]
    [InlineData("4 kg", "  ^^", "4 mm or 5/32 in")]
    [InlineData("4 mill", "  ^^^^", "Write mm or thou")]
    [InlineData("3 clicks", "  ^^^^^^", "size of one click")]
    [InlineData("5/ in", " ^^^^", "5/32")]
    [InlineData("5/0 in", " ^^", "0 below its line")]
    [InlineData("1 5/4 in", "  ^^^", "below one")]
    [InlineData("4. mm", " ^", "decimal sign")]
    [InlineData("-", "^", "number after the sign")]
    [InlineData("mm", "^^", "number is missing")]
    [InlineData("4", "^", "unit is missing")]
    [InlineData("", "^", "Nothing was typed")]
    [InlineData("4e999 mm", " ^^^^", "power of ten")]
    public void A_length_that_cannot_be_read(string typed, string carets, string says)
    {
        Assert.False(Length.TryParse(typed, Plain, null, out _, out ParseFault? fault));
        Assert.Equal(typed + "\n" + carets, fault.Render());
        Assert.Contains(says, fault.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_point_in_a_comma_style_that_may_be_of_thousands_is_refused_with_the_remedy()
    {
        Assert.False(Length.TryParse("4.125 mm", WritingStyle.CommaMetric, null, out _, out ParseFault? fault));
        Assert.Equal("Write 4,125, or 4125 if thousands were meant.", fault.Remedy);
    }

    [Theory]
    [InlineData("4.0 mm", 4)]
    [InlineData("+0.25 mm", 0.25)]
    [InlineData("0.125 mm", 0.125)]
    [InlineData(".125 mm", 0.125)]
    [InlineData("1300.125 mm", 1300.125)]
    [InlineData("-0.5", -0.5)]
    public void F30_A_point_in_a_comma_style_that_can_only_be_a_decimal_sign_is_taken(string typed, double mm) =>
        Assert.Equal(mm, Length.Parse(typed, WritingStyle.CommaMetric, LengthUnit.Mm).Mm, 12);

    [Fact]
    public void Thirty_seconds_of_a_millimetre_are_refused()
    {
        Assert.False(Length.TryParse("5/32", Plain, LengthUnit.Mm, out _, out ParseFault? fault));
        Assert.Equal("Write 5/32 in, or 5/32 mm.", fault.Remedy);
    }

    [Theory]
    [InlineData("0.3 clicks", "Write 0 clicks or ½ click.")]
    [InlineData("-1.2", "Write -1½ clicks or -1 click.")]
    [InlineData("1/3 flat", "Write 0 flats or ½ flat.")]
    [InlineData("-2 clicks in", "Write either -2 clicks or 2 clicks out.")]
    [InlineData("2 clickes", "Did you mean 'clicks' (click)?")]
    [InlineData("199999999999932/9999", "Write 2 clicks or 1½ clicks.")]
    [InlineData("5000 clicks", "Write 2 clicks or 1½ clicks.")]
    public void Clicks_that_cannot_be_read(string typed, string remedy)
    {
        Assert.False(Clicks.TryParse(typed, Plain, out _, out ParseFault? fault));
        Assert.Equal(remedy, fault.Remedy);
    }

    [Theory]
    [InlineData("1:75", "Write 75 min.")]
    [InlineData("1:5", "Write 1:30, or 1 min 30 s.")]
    [InlineData("20 min 1 h", "Write it like 1 h 20 min.")]
    [InlineData("-2 min", "Leave the minus out.")]
    [InlineData("1 h 20", "Write a duration like 20 min, 1 h 20 min or 1:30.")]
    [InlineData("2 minuets", "Did you mean 'minutes' (min)?")]
    public void Durations_that_cannot_be_read(string typed, string remedy)
    {
        Assert.False(Duration.TryParse(typed, Plain, null, out _, out ParseFault? fault));
        Assert.Equal(remedy, fault.Remedy);
    }

    [Fact]
    public void Parse_throws_the_documented_exception_with_the_fault()
    {
        var thrown = Assert.Throws<QuantityFormatException>(() => Speed.Parse("4 knots", Plain));
        Assert.Equal("4 knots", thrown.Fault.Text);
        Assert.Equal(thrown.Fault.ToString(), thrown.Message);
    }

    [Fact]
    public void A_control_character_does_not_shift_the_caret()
    {
        Assert.False(Length.TryParse("4\tkg", Plain, null, out _, out ParseFault? fault));
        Assert.Equal("4 kg\n  ^^", fault.Render());
    }
}
