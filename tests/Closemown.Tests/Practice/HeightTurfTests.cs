using System.Text.Json.Nodes;
using Xunit;
using static Closemown.Tests.Practice.HeightTold;

namespace Closemown.Tests.Practice;

/// <summary>A height that is asked for against the turf that stands there, and areas that nobody names. Common practice, no source.</summary>
public sealed class HeightTurfTests
{
    [Theory]
    [InlineData(9, 4)]
    [InlineData(8, 5)]
    [InlineData(30, 12)]
    public void P33_a_height_far_below_the_turf_says_first_what_the_first_mowing_would_take(double stands, double cut)
    {
        foreach (var read in (string[])[Gauge(5, 5), "", Gauge(cut + 0.6, cut + 0.6)])
        {
            var pipe = Stands(stands);
            if (read.Length > 0) pipe.Say(read);
            foreach (var aim in (string[])[FormattableString.Invariant($$""","aim":{"cutMm":{{cut}}}"""), FormattableString.Invariant($$""","aim":{"benchMm":{{cut + 0.6}},"area":"green"}""")])
            {
                var next = pipe.Next(aim);
                var first = next["firstMowing"]!;
                Assert.Equal((stands - cut) / stands, (double)first["shareRemoved"]!, 0.02);
                Assert.Contains("more than a third", (string)next["why"]![0]!, StringComparison.Ordinal);
                Assert.Contains("step-down", (string)next["say"]!, StringComparison.Ordinal);
                // The way down that it offers is a question that the pipe answers.
                var rows = pipe.Say(first["stepDown"]!.ToJsonString())["step-down"]!.AsArray();
                Assert.True(rows.Count >= 2, next.ToJsonString());
                Assert.All(rows, r => Assert.True((double)r!["shareRemoved"]! <= 0.3334, r.ToJsonString()));
                Assert.Equal(cut, (double)rows[^1]!["cutMm"]!, 0.01);
            }
        }
    }

    [Theory]
    [InlineData(6, 4.2)]
    [InlineData(5, 5)]
    [InlineData(4, 6)]
    public void P33_a_mowing_that_takes_a_third_at_most_is_not_spoken_of(double stands, double cut)
    {
        var pipe = Stands(stands);
        pipe.Say(Gauge(5, 5));
        var next = pipe.Next(FormattableString.Invariant($$""","aim":{"cutMm":{{cut}}}"""));
        Assert.Null(next["firstMowing"]);
        Assert.DoesNotContain("step-down", next.Said(), StringComparison.Ordinal);
    }

    [Fact]
    public void P33_turf_that_nobody_measured_is_not_guessed_at()
    {
        var pipe = new Piped();
        pipe.Say("""{"kind":"area","area":"green"}""", Gauge(5, 5));
        Assert.Null(pipe.Next(""","aim":{"cutMm":2.5}""")["firstMowing"]);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void P45_a_mowing_without_a_name_belongs_to_the_only_area(bool namedFirst)
    {
        // Named beforehand, or only after mowings that are in the book already.
        string[] named = ["""{"kind":"area","area":"green","grass":"cool","lat":52}"""];
        string[] mown = [Gauge(5, 5, On(0)), Mow(On(0.1))];
        string spots = $$"""{"kind":"canopy","area":"green","when":"after","how":"prism","mm":[4.1,4.2,4.1,4.2,4.1]{{On(0.2)}}}""";
        Piped unsaid = new(), said = new();
        unsaid.Say([.. namedFirst ? named : [], .. mown, .. namedFirst ? [] : named, spots]);
        said.Say([.. namedFirst ? named : [], mown[0], Mow(""","area":"green" """.TrimEnd() + On(0.1)), .. namedFirst ? [] : named, spots]);
        foreach (var ask in (string[])["""{"ask":"height"}""", """{"ask":"turf"}""", """{"ask":"plan","days":5}""", """{"ask":"sink"}""", """{"ask":"canopy"}"""])
            Assert.Equal(said.Say(ask).ToJsonString(), unsaid.Say(ask).ToJsonString());
        Assert.Equal("green", (string)unsaid.Height()["area"]!);
        Assert.True((double)unsaid.Height()["sinkMm"]!["sd"]! < 0.3, "the spots tell of that mowing's cut");
        Assert.All(unsaid.Say("""{"ask":"sink"}""")["sink"]!["moments"]!.AsArray(), m => Assert.Equal("green", (string)m!["area"]!));
        Assert.Equal("mower", (string)unsaid.Height()["unit"]!);
    }

    [Fact]
    public void P45_a_second_area_takes_no_mowing_from_the_first()
    {
        var pipe = new Piped();
        pipe.Say("""{"kind":"area","area":"green"}""", Gauge(5, 5, On(0)), Mow(On(0.1)), $$"""{"kind":"canopy","area":"green","when":"after","how":"prism","mm":[4.1,4.2,4.1]{{On(0.2)}}}""");
        var before = Sink(pipe);
        pipe.Say($$"""{"kind":"area","area":"lawn"{{On(1)}}}""");
        Assert.Equal(before, Sink(pipe));
        // From then on a mowing without a name could be of either: it is no longer guessed.
        pipe.Say(Mow(On(2)));
        Assert.Equal(before, Sink(pipe));

        static string Sink(Piped pipe) => pipe.Say("""{"ask":"height","area":"green"}""")["height"]!["readings"]!.ToJsonString();
    }

    [Fact]
    public void P45_a_book_opened_anew_answers_as_the_one_that_was_written_to()
    {
        var book = new Closemown.Book.MemoryBook();
        var ids = new Closemown.Book.SequentialIds();
        Closemown.Pipe.Conversation Open() => new(book, Closemown.Advice.AdviceSettings.Default, Closemown.Advice.Phrasing.Plain, ids.Next);
        var first = Open();
        foreach (var line in (string[])[Gauge(5, 5, On(0)), Mow(On(0.1)), Mow(On(3)), $$"""{"kind":"canopy","area":"green","when":"after","mm":[4.1,4.2]{{On(3.1)}}}"""])
            Assert.True((bool)JsonNode.Parse(first.Say(line))!["ok"]!, line);
        var again = Open();
        foreach (var ask in (string[])["""{"ask":"height"}""", """{"ask":"turf"}""", """{"ask":"today"}"""]) Assert.Equal(first.Say(ask), again.Say(ask));
        Assert.Contains("\"area\":\"green\"", again.Say("""{"ask":"height"}"""), StringComparison.Ordinal);
    }

    private static Piped Stands(double mm)
    {
        var pipe = new Piped();
        pipe.Say("""{"kind":"area","area":"green","grass":"cool","lat":52}""", FormattableString.Invariant($$"""{"kind":"canopy","area":"green","when":"before","mm":[{{mm}},{{mm}},{{mm}}]{{On(0)}}}"""));
        return pipe;
    }
}
