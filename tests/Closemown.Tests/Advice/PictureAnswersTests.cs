using System.Text.Json.Nodes;
using Closemown.Tests.Practice;
using Xunit;

namespace Closemown.Tests.Advice;

/// <summary>What the pictures of the turf and of the sink are drawn from.</summary>
public sealed class PictureAnswersTests
{
    private static Piped Mown()
    {
        var pipe = new Piped();
        pipe.Say(
            """{"kind":"area","area":"green","grass":"cool","lat":51,"at":"2026-06-01T08:00:00Z"}""",
            """{"kind":"wish","area":"green","cutMm":4.5,"at":"2026-06-01T08:01:00Z"}""",
            """{"kind":"gauge","unit":"u","leftMm":5.6,"rightMm":5.6,"at":"2026-06-01T08:30:00Z"}""",
            """{"kind":"mow","unit":"u","area":"green","hours":0.5,"at":"2026-06-01T09:00:00Z"}""",
            """{"kind":"canopy","area":"green","mm":[5,5.1,4.9],"when":"after","how":"prism","at":"2026-06-01T09:40:00Z"}""",
            """{"kind":"canopy","area":"green","lowMm":5,"when":"before","how":"card","at":"2026-06-04T08:00:00Z"}""",
            """{"kind":"mow","unit":"u","area":"green","hours":0.5,"at":"2026-06-04T09:00:00Z"}""",
            """{"kind":"canopy","area":"green","mm":[5,5.2],"when":"after","how":"prism","at":"2026-06-04T09:40:00Z"}""");
        return pipe;
    }

    [Fact]
    public void The_canopy_is_told_day_by_day_with_mowings_readings_and_what_lies_ahead()
    {
        var canopy = Mown().Say("""{"ask":"canopy","area":"green","back":2,"ahead":3}""")["canopy"]!;
        Assert.Equal((4.5, "2026-06-04"), ((double)canopy["wishMm"]!, (string)canopy["today"]!));
        var days = canopy["days"]!.AsArray();
        Assert.Equal(["2026-06-02", "2026-06-03", "2026-06-04", "2026-06-05", "2026-06-06"], days.Select(d => (string)d!["date"]!));
        Assert.Equal([false, false, true, true, true], days.Select(d => (bool)d!["ahead"]!));
        Assert.All(days, d => Assert.True((double)d!["canopyMm"]!["p05"]! >= 0 && (double)d["canopyMm"]!["sd"]! > 0 && (double)d["et0Mm"]! > 0));
        // Grown from one day to the next, as nothing was mown in between.
        Assert.True((double)days[1]!["canopyMm"]!["mean"]! > (double)days[0]!["canopyMm"]!["mean"]!);
        // What was only seen to lie above a step is no height, and what lies before the first day is not shown.
        var read = Assert.Single(canopy["readings"]!.AsArray())!;
        Assert.Equal((5.1, 2, "after", "2026-06-04"), (Math.Round((double)read["mm"]!, 9), (int)read["spots"]!, (string)read["when"]!, (string)read["date"]!));
    }

    [Fact]
    public void The_days_before_the_first_entry_are_left_out()
    {
        var days = Mown().Say("""{"ask":"canopy","area":"green"}""")["canopy"]!["days"]!.AsArray();
        Assert.Equal("2026-06-01", (string)days[0]!["date"]!);
        Assert.True((bool)days[0]!["mown"]!);
        Assert.Equal(3 + 14, days.Count);
    }

    [Fact]
    public void The_sink_is_told_mowing_by_mowing_and_ends_where_the_height_stands()
    {
        var pipe = Mown();
        var moments = pipe.Say("""{"ask":"sink","unit":"u"}""")["sink"]!["moments"]!.AsArray();
        Assert.Equal([("2026-06-01", 3), ("2026-06-04", 2)], moments.Select(m => ((string)m!["date"]!, (int)m["spots"]!)));
        Assert.All(moments, m => Assert.Equal("green", (string)m!["area"]!));
        // Each reading teaches: the first band is narrower than what is thought untold, the second narrower than the first.
        Assert.True((double)moments[1]!["sinkMm"]!["sd"]! < (double)moments[0]!["sinkMm"]!["sd"]!);
        Assert.True((double)moments[0]!["sinkMm"]!["sd"]! < (double)Untold()["sinkMm"]!["sd"]!);
        // The running belief and the whole record end alike.
        var height = pipe.Say("""{"ask":"height","unit":"u"}""")["height"]!;
        Assert.Equal((double)height["sinkMm"]!["mean"]!, (double)moments[1]!["sinkMm"]!["mean"]!, 0.03);
        pipe.Say("""{"kind":"water","area":"lawn","mm":5,"at":"2026-06-05T10:00:00Z"}""");
        Assert.Empty(pipe.Say("""{"ask":"sink","unit":"u","area":"lawn"}""")["sink"]!["moments"]!.AsArray());      // never mown by it
    }

    [Theory]
    [InlineData("""{"ask":"canopy","area":"green","back":-1}""", "back")]
    [InlineData("""{"ask":"canopy","area":"green","back":400}""", "back")]
    [InlineData("""{"ask":"canopy","area":"green","ahead":0}""", "ahead")]
    [InlineData("""{"ask":"canopy","area":7}""", "area")]
    [InlineData("""{"ask":"sink","unit":"u","area":""}""", "area")]
    public void A_question_that_cannot_be_meant_is_told(string question, string field)
    {
        var answer = Mown().SayAll(question)[0];
        Assert.False((bool)answer["ok"]!);
        Assert.Equal(field, (string)answer["error"]!["field"]!);
        Assert.NotEqual("", (string)answer["error"]!["remedy"]!);
    }

    [Fact]
    public void Each_part_of_what_is_not_known_of_the_cut_has_its_words() =>
        Assert.All(Untold()["drivers"]!.AsArray(), d => Assert.StartsWith("the ", ((string)d!["say"]!).Replace("how ", "the ", StringComparison.Ordinal), StringComparison.Ordinal));

    private static JsonNode Untold()
    {
        var pipe = new Piped();
        pipe.Say("""{"kind":"gauge","unit":"u","leftMm":5.6,"rightMm":5.6,"at":"2026-06-01T08:30:00Z"}""");
        return pipe.Say("""{"ask":"height","unit":"u"}""")["height"]!;
    }
}
