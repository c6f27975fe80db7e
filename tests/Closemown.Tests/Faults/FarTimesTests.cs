using System.Text.Json.Nodes;
using Closemown.Advice;
using Closemown.Book;
using Closemown.Pipe;
using Xunit;

namespace Closemown.Tests.Faults;

/// <summary>Times far off are asked about: one such entry would come before or after all others.</summary>
public sealed class FarTimesTests : IDisposable
{
    private DateTimeOffset wall = new(2026, 5, 1, 8, 0, 0, TimeSpan.Zero);
    private readonly MemoryBook book = new();
    private readonly Conversation talk;

    public FarTimesTests() => talk = new(book, AdviceSettings.Default, Phrasing.Plain, SequentialIds.After(book).Next, () => wall, () => wall);

    private JsonObject Say(string line) => JsonNode.Parse(talk.Say(line))!.AsObject();

    public void Dispose() => book.Dispose();

    private string Said(string line) => Say(line) is var a && (bool)a["ok"]! ? "ok" : $"{(string)a["error"]!["code"]!} {(string)a["error"]!["field"]!}";

    [Theory]
    [InlineData("2150-01-01T00:00:00Z", "implausible at")]
    [InlineData("2027-01-01T00:00:00Z", "implausible at")]
    [InlineData("2026-05-02T08:00:01Z", "implausible at")]
    [InlineData("2026-05-02T08:00:00Z", "ok")]
    [InlineData("1999-05-02T08:00:00Z", "ok")]
    public void F8_F29_An_entry_of_the_future_is_asked_about(string at, string said)
    {
        Assert.Equal(said, Said($$"""{"kind":"clicks","unit":"m","left":1,"at":"{{at}}"}"""));
        Assert.Equal("ok", Said($$"""{"kind":"clicks","unit":"m","left":1,"at":"{{at}}","confirmed":["at"]}"""));
    }

    [Fact]
    public void F8_A_clock_that_stands_before_the_last_entry_is_asked_about()
    {
        Assert.Equal("ok", Said("""{"kind":"clicks","unit":"m","left":1}"""));
        wall = DateTimeOffset.UnixEpoch;
        var answer = Say("""{"kind":"clicks","unit":"m","left":1}""");
        Assert.Equal("implausible", (string)answer["error"]!["code"]!);
        Assert.Contains("1970-01-01", (string)answer["error"]!["message"]!, StringComparison.Ordinal);
        Assert.Contains("2026-05-01", (string)answer["error"]!["message"]!, StringComparison.Ordinal);
        Assert.Equal("ok", Said("""{"kind":"clicks","unit":"m","left":1,"at":"2026-05-01T08:00:00Z","confirmed":["at"]}"""));
        Assert.Equal("ok", Said("""{"kind":"clicks","unit":"m","left":1,"confirmed":["at"]}"""));
    }

    [Fact]
    public void F8_What_lies_in_the_future_and_was_confirmed_or_taken_out_is_not_asked_about_again()
    {
        Assert.Equal("ok", Said("""{"kind":"clicks","unit":"m","left":1,"at":"2150-01-01T00:00:00Z","confirmed":["at"]}"""));
        Assert.Equal("ok", Said("""{"kind":"clicks","unit":"m","left":1}"""));
        wall = wall.AddYears(1);
        Assert.Equal("ok", Said("""{"kind":"clicks","unit":"m","left":1}"""));
        var slip = book.ReadAll()[^1].Entry.Id;
        wall = wall.AddYears(-1);
        Assert.Equal("implausible at", Said("""{"kind":"clicks","unit":"m","left":1}"""));
        Assert.Equal("ok", Said($$"""{"kind":"void","voids":"{{slip:D}}","confirmed":["at"]}"""));
        Assert.Equal("ok", Said("""{"kind":"clicks","unit":"m","left":1}"""));
    }

    [Fact]
    public void F8_Today_says_that_the_book_holds_an_entry_of_the_future()
    {
        Assert.Equal("ok", Said("""{"kind":"clicks","unit":"m","left":1}"""));
        Assert.Empty(Say("""{"ask":"today"}""")["today"]!["unusual"]!.AsArray());
        Assert.Equal("ok", Said("""{"kind":"clicks","unit":"m","left":1,"at":"2026-05-02T07:00:00Z"}"""));
        wall = wall.AddDays(-30);
        var odd = Assert.Single(Say("""{"ask":"today"}""")["today"]!["unusual"]!.AsArray());
        Assert.Contains("2 entries are of days to come", (string)odd!["say"]!, StringComparison.Ordinal);
    }

    [Fact]
    public void A_minute_between_two_devices_is_nothing_to_ask_about()
    {
        Assert.Equal("ok", Said("""{"kind":"clicks","unit":"m","left":1}"""));
        wall = wall.AddHours(-3);
        Assert.Equal("ok", Said("""{"kind":"clicks","unit":"m","left":1}"""));
    }

    [Theory]
    [InlineData("""{"ask":"steel","unit":"mowr"}""", "unit", "Did you mean \"mower\"?")]
    [InlineData("""{"ask":"next","unit":"mowr"}""", "unit", "Did you mean \"mower\"?")]
    [InlineData("""{"ask":"height","unit":"xyzzyx"}""", "unit", "It has mower.")]
    [InlineData("""{"ask":"turf","area":"gren"}""", "area", "Did you mean \"green\"?")]
    [InlineData("""{"ask":"plan","area":"nosuch"}""", "area", "It has green.")]
    [InlineData("""{"ask":"canopy","area":"nosuch"}""", "area", "It has green.")]
    [InlineData("""{"ask":"next","unit":"mower","aim":{"cutMm":4,"area":"gren"}}""", "aim.area", "Did you mean \"green\"?")]
    public void F8_A_name_that_the_book_does_not_know_gets_no_numbers(string question, string field, string remedy)
    {
        Assert.Equal("ok", Said("""{"kind":"mow","unit":"mower","area":"green","hours":0.5}"""));
        var answer = Say(question);
        Assert.False((bool)answer["ok"]!);
        Assert.Equal(("bad-value", field, remedy), ((string)answer["error"]!["code"]!, (string)answer["error"]!["field"]!, (string)answer["error"]!["remedy"]!));
        Assert.Contains("The book has no", (string)answer["error"]!["message"]!, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("""{"ask":"turf","area":"green","date":"9999-12-31"}""", "date")]
    [InlineData("""{"ask":"plan","area":"green","from":"9999-12-01","days":60}""", "from")]
    [InlineData("""{"ask":"plan","area":"green","from":"9000-01-01"}""", "from")]
    [InlineData("""{"ask":"turf","area":"green","date":"2028-05-02"}""", "date")]
    [InlineData("""{"ask":"turf","area":"green","date":"1899-12-31"}""", "date")]
    public void F2_A_day_too_far_off_is_a_fault(string question, string field)
    {
        var answer = Say(question);
        Assert.Equal(("bad-value", field), ((string)answer["error"]!["code"]!, (string)answer["error"]!["field"]!));
        Assert.Contains("2028-05-01", (string)answer["error"]!["remedy"]!, StringComparison.Ordinal);
        Assert.Equal("ok", Said("""{"ask":"turf","area":"green","date":"2028-05-01"}"""));
    }
}
