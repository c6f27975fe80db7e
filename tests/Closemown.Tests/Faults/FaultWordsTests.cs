using Closemown.Entries;
using Closemown.Tests.Entries;
using Xunit;

namespace Closemown.Tests.Faults;

/// <summary>Each fault names the field, the reason and the remedy.</summary>
public sealed class FaultWordsTests
{
    private static EntryFault Fault(string line) => EntryReader.Read(line, new EntryContext { NewId = at => EntryIds.Make(at, 0, 1), Now = () => Lines.Start, OnlyUnit = () => "u", OnlyArea = () => "a" }, out _)[0];

    [Fact]
    public void F17_A_name_given_twice_is_said_to_be_given_twice()
    {
        var fault = Fault("""{"kind":"lap","minutes":1,"minutes":2}""");
        Assert.Equal(("bad-json", "minutes"), (fault.Code, fault.Field));
        Assert.Contains("\"minutes\" is given twice (at character 27)", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void F17_Twice_is_also_seen_inside_and_beside_names_that_may_come_again()
    {
        Assert.Contains("\"a\" is given twice", Fault("""{"kind":"lap","minutes":1,"x":{"a":1,"b":{"a":2},"a":3}}""").Message, StringComparison.Ordinal);
        Assert.Empty(EntryReader.Read(Lines.Whole("""{"kind":"lap","minutes":1,"x":[{"a":1},{"a":1}]}""", 1), EntryContext.Whole, out _));
    }

    [Fact]
    public void F17_Nesting_is_said_to_be_nesting()
    {
        var fault = Fault("{\"kind\":\"lap\",\"minutes\":1,\"x\":" + new string('[', 20) + new string(']', 20) + "}");
        Assert.Equal("bad-json", fault.Code);
        Assert.Contains("deeper than 16 (at character 46)", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void F17_What_is_no_JSON_says_at_which_character_also_behind_others_than_ASCII() =>
        Assert.Contains("not JSON (at character 30)", Fault("{\"kind\":\"lap\",\"note\":\"äöü🌱\" \"x\"}").Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("unit", "a\\u0007b", "control character U+0007 (at character 2)")]
    [InlineData("note", "a\\u001b[2J", "control character U+001B (at character 2)")]
    [InlineData("by", "x\\u0085y", "control character U+0085 (at character 2)")]
    [InlineData("note", "x\\u202Ey", "U+202E, which turns the order")]
    [InlineData("unit", "\\u200B", "U+200B, which nobody sees (at character 1)")]
    [InlineData("unit", "gre\\u200Ben", "U+200B, which nobody sees (at character 4)")]
    [InlineData("unit", "\\u200D", "Nothing of it can be seen.")]
    public void F12_F17_F18_Signs_that_steer_or_hide_are_named(string field, string text, string message)
    {
        var fault = Fault($$"""{"kind":"lap","minutes":1,"{{field}}":"{{text}}"}""");
        Assert.Equal(("bad-value", field), (fault.Code, fault.Field));
        Assert.Contains(message, fault.Message, StringComparison.Ordinal);
        Assert.NotEmpty(fault.Remedy);
    }

    [Theory]
    [InlineData("""{"kind":"strip","um":80,"name":"\u001b[2J"}""", "name")]
    [InlineData("""{"kind":"feed","label":"a\u0000"}""", "label")]
    [InlineData("""{"kind":"strip","um":80,"typed":{"um":"\u001b]0;x\u0007"}}""", "typed")]
    [InlineData("""{"kind":"strip","um":80,"a\u001bb":1}""", "")]
    public void F12_Screens_are_not_steered_by_any_text_that_comes_in(string line, string field)
    {
        var fault = Fault(line);
        Assert.Equal(("bad-value", field), (fault.Code, fault.Field));
        Assert.Contains("U+00", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Notes_may_have_lines_and_names_may_be_of_any_script()
    {
        Assert.Empty(EntryReader.Read(Lines.Whole("""{"kind":"lap","minutes":1,"unit":"Grüne 🌱 می‌خواهم","note":"one\ntwo\tthree"}""", 1), EntryContext.Whole, out _));
    }

    [Theory]
    [InlineData("""{"kind":"soil-test","P":1e308}""", "bad-value", "outside 0 to 1000000")]
    [InlineData("""{"kind":"soil-test","P":-5}""", "bad-value", "outside 0 to")]
    [InlineData("""{"kind":"soil-test","Kryptonite":5}""", "implausible", "no element that soils are tested for")]
    [InlineData("""{"kind":"soil-test","K":400000}""", "implausible", "more than soils hold")]
    public void F18_A_soil_is_tested_for_elements_within_reason(string line, string code, string message)
    {
        var fault = Fault(line);
        Assert.Equal(code, fault.Code);
        Assert.Contains(message, fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void F18_What_the_person_stands_by_is_taken() =>
        Assert.Empty(EntryReader.Read(Lines.Whole("""{"kind":"soil-test","Kryptonite":5,"confirmed":["Kryptonite"]}""", 1), EntryContext.Whole, out _));
}
