using System.Text.Json.Nodes;
using Xunit;

namespace Closemown.Tests.Pipe;

/// <summary>Turf of which nothing was heard for long: no nonsense, and said to be not known.</summary>
public sealed class SilentTurfTests
{
    private static readonly string[] Season =
    [
        """{"kind":"area","area":"green","grass":"cool","species":"creeping bentgrass","lat":51.5,"at":"2025-05-01T09:00:00Z"}""",
        .. Enumerable.Range(0, 12).SelectMany(k => (string[])
        [
            $$"""{"kind":"mow","area":"green","hours":0.4,"cutMm":5,"at":"{{new DateTime(2025, 8, 1).AddDays(7 * k):yyyy-MM-dd}}T09:00:00Z"}""",
            $$"""{"kind":"canopy","area":"green","mm":{{(k % 2 == 0 ? "5.1" : "5.3")}},"when":"after","at":"{{new DateTime(2025, 8, 1).AddDays(7 * k):yyyy-MM-dd}}T10:00:00Z"}""",
        ]),
    ];

    [Theory]
    [InlineData("2026-01-10")]
    [InlineData("2026-06-01")]
    [InlineData("2026-12-01")]
    [InlineData("2027-06-15")]
    public void F8_Long_after_the_last_news_the_height_is_within_an_unmown_sward_and_said_to_be_not_known(string date) => Sound(Talk.After(Season), date);

    [Theory]
    [InlineData("2026-06-01")]
    [InlineData("2038-06-01")]
    [InlineData("2100-06-01")]
    [InlineData("2199-06-01")]
    public void F8_An_entry_of_another_kind_far_on_makes_no_nonsense_of_the_turf(string date)
    {
        var talk = Talk.After(Season);
        // The pipe asks at the time of its last entry.
        talk.Say($$"""{"kind":"wish","area":"green","cutMm":4.5,"at":"{{date}}T09:00:00Z","confirmed":["at"]}""");
        Sound(talk, date);
        var today = talk.Did("""{"ask":"today"}""")["today"]!;
        Assert.False((bool)today["turf"]![0]!["canopyKnown"]!);
        Within(today["turf"]![0]!["canopyMm"]!);
    }

    [Fact]
    public void F8_Today_asks_to_read_it_instead_of_sending_anybody_to_mow()
    {
        var talk = Talk.After([.. Season, """{"kind":"wish","area":"green","cutMm":4.5,"at":"2026-06-01T09:00:00Z"}"""]);
        var today = talk.Did("""{"ask":"today"}""")["today"]!;
        JsonNode[] tasks = [today["now"]!, .. today["next"]!.AsArray().Select(t => t!)];
        var turf = Assert.Single(tasks, t => (string?)t["area"] == "green" && (string)t["do"]! is "canopy" or "mow" or "step-down");
        Assert.Equal("canopy", (string)turf["do"]!);
        Assert.Equal("What the turf stands at is not known: it was not read or mown for 32 weeks. Read it at five spots before anything is mown.", (string)turf["say"]!);
    }

    [Fact]
    public void F8_While_there_is_news_it_is_known()
    {
        var turf = Talk.After(Season).Did("""{"ask":"turf","area":"green"}""")["turf"]!;
        Assert.True((bool)turf["canopyKnown"]!);
        Assert.Contains(Talk.Texts(turf), t => t.StartsWith("The turf stands at about 5", StringComparison.Ordinal));
    }

    [Fact]
    public void F8_A_sward_read_higher_than_usual_is_believed()
    {
        var turf = Talk.After([.. Season, """{"kind":"canopy","area":"green","mm":220,"when":"before","at":"2026-07-01T09:00:00Z","confirmed":["mm"]}"""]).Did("""{"ask":"turf","area":"green"}""")["turf"]!;
        Assert.InRange((double)turf["canopyMm"]!["mean"]!, 200, 225);
        Assert.True((bool)turf["canopyKnown"]!);
    }

    [Fact]
    public void F8_A_plan_of_unmown_turf_stays_under_the_ceiling()
    {
        var talk = Talk.After([.. Season, """{"kind":"wish","area":"green","minutesADay":1,"at":"2026-06-01T09:00:00Z"}"""]);
        Assert.All(talk.Did("""{"ask":"plan","area":"green","days":60}""")["plan"]!.AsArray(), d => Within(d!["canopyMm"]!));
    }

    private static void Sound(Talk talk, string date)
    {
        var turf = talk.Did($$"""{"ask":"turf","area":"green","date":"{{date}}"}""")["turf"]!;
        Within(turf["canopyMm"]!);
        Assert.Equal((string)turf["date"]!, date);
        if ((bool)turf["canopyKnown"]!)
        {
            Assert.True((double)turf["canopyMm"]!["sd"]! < 0.26 * (double)turf["canopyMm"]!["mean"]!);
            return;
        }
        Assert.Contains(Talk.Texts(turf), t => t.StartsWith("What the turf stands at is not known", StringComparison.Ordinal));
        Assert.DoesNotContain(Talk.Texts(turf), t => t.Contains("stands at about", StringComparison.Ordinal) || t.StartsWith("Mown now", StringComparison.Ordinal));
    }

    /// <summary>Creeping bentgrass stands at most 150 mm high.</summary>
    private static void Within(JsonNode q)
    {
        foreach (var point in (string[])["mean", "p05", "p50", "p95"]) Assert.InRange((double)q[point]!, 0, 150);
        Assert.InRange((double)q["sd"]!, 0, 0.3 * 150);
    }
}
