using System.Text.Json.Nodes;
using Closemown.Advice;
using Closemown.Book;
using Closemown.Pipe;
using Xunit;

namespace Closemown.Tests.Advice;

/// <summary>How the gap went, entry by entry, is told as it was believed then.</summary>
public sealed class SteelHistoryTests
{
    private static Conversation Talk()
    {
        var talk = new Conversation(BookFile.Open(BookFile.InMemory), AdviceSettings.Default, Phrasing.Plain, new SequentialIds().Next);
        foreach (var line in (string[])
        [
            """{"kind":"paper-cut","unit":"mower","left":"cuts","centre":"cuts","right":"cuts"}""",
            """{"kind":"strip","um":78}""",
            """{"kind":"clicks","unit":"mower","left":-2,"right":0}""",
            """{"kind":"lap","unit":"mower","minutes":2}""",
        ]) Assert.Contains("\"ok\":true", talk.Say(line), StringComparison.Ordinal);
        return talk;
    }

    private static JsonArray History(Conversation talk, string more = "") => JsonNode.Parse(talk.Say($$"""{"ask":"steel-history","unit":"mower"{{more}}}"""))!["steel-history"]!.AsArray();

    [Fact]
    public void Each_reading_and_step_is_told_in_order_with_what_it_changed()
    {
        var history = History(Talk());
        Assert.Equal(["paper-cut", "clicks", "lap"], history.Select(p => (string?)p!["kind"]));
        // Two clicks out at the left open the left end and leave the right where it was.
        double Left(int i) => (double)history[i]!["clearanceUm"]!["left"]!["mean"]!;
        double Right(int i) => (double)history[i]!["clearanceUm"]!["right"]!["mean"]!;
        Assert.InRange(Left(1) - Left(0), 15, 80);
        Assert.InRange(Right(1) - Right(0), -5, 5);
        Assert.Equal(-2, (double)history[1]!["left"]!);
        Assert.Equal(2, (double)history[2]!["minutes"]!);
    }

    [Fact]
    public void The_last_is_what_is_believed_now()
    {
        var talk = Talk();
        var now = JsonNode.Parse(talk.Say("""{"ask":"steel","unit":"mower"}"""))!["steel"]!;
        var last = History(talk, ",\"last\":1");
        Assert.Single(last);
        foreach (var station in (string[])["left", "centre", "right"])
            Assert.Equal((double)now["clearanceUm"]![station]!["mean"]!, (double)last[0]!["clearanceUm"]![station]!["mean"]!, 6.0);
    }

    [Theory]
    [InlineData("0")]
    [InlineData("5000")]
    public void Too_few_or_too_many_are_refused(string last) =>
        Assert.Contains("\"field\":\"last\"", Talk().Say($$"""{"ask":"steel-history","unit":"mower","last":{{last}}}"""), StringComparison.Ordinal);
}
