using Closemown.Pages;
using Closemown.Pages.Heights;
using Closemown.Quantities;
using Xunit;

namespace Closemown.Tests.Pages;

/// <summary>Heights asked for, and turns said in few words.</summary>
public sealed class HeightWordsTests
{
    [Theory]
    [InlineData("4.5", 4.5)]
    [InlineData("4 mm", 4)]
    [InlineData("5/32 in", 5 * 25.4 / 32)]
    [InlineData("0.156\"", 0.156 * 25.4)]
    public void A_height_is_read_in_any_unit(string typed, double mm) => Assert.Equal(mm, CutAsked.Of(typed, WritingStyle.Plain).Mm!.Value, 1e-9);

    [Fact]
    public void A_bare_number_is_in_the_readers_own_unit()
    {
        Assert.Equal(0.156 * 25.4, CutAsked.Of("0.156", WritingStyle.American).Mm!.Value, 1e-9);
        Assert.Equal(4.5, CutAsked.Of("4,5", WritingStyle.CommaMetric).Mm!.Value, 1e-9);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("  ")]
    public void Nothing_typed_is_no_fault(string? typed) => Assert.Equal(new CutAsked("", null, null), CutAsked.Of(typed, WritingStyle.Plain));

    [Theory]
    [InlineData("low")]
    [InlineData("0")]
    [InlineData("-4")]
    [InlineData("4 m")]
    [InlineData("1/2 of 4")]
    public void What_is_no_height_to_mow_at_is_told_and_kept(string typed)
    {
        var asked = CutAsked.Of(typed, WritingStyle.Plain);
        Assert.Null(asked.Mm);
        Assert.Equal(typed, asked.Typed);
        Assert.NotEqual("", asked.Fault);
    }

    [Theory]
    [InlineData(0.25, "Raise left by 1/4 turn (0.25)")]
    [InlineData(-0.23, "Lower left by about 1/4 turn (0.23)")]
    [InlineData(-0.02, "Lower left by a hair (0.02)")]
    [InlineData(1, "Raise left by 1 turn (1.00)")]
    [InlineData(1.39, "Raise left by about 1 turn and 3/8 (1.39)")]
    [InlineData(0.99, "Raise left by about 1 turn (0.99)")]
    [InlineData(-2.5, "Lower left by 2 turns and 1/2 (2.50)")]
    public void A_turn_is_said_in_parts_of_a_turn(double turns, string said) => Assert.Equal(said, TurnWords.Say("left", turns, new Figures(WritingStyle.Plain)));
}
