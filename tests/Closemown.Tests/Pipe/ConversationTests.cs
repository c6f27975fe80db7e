using System.Text.Json.Nodes;
using Closemown.Advice;
using Closemown.Book;
using Closemown.Entries;
using Closemown.Pipe;
using Closemown.Tests.Steel;
using Xunit;

namespace Closemown.Tests.Pipe;

/// <summary>Entries and questions line by line: what is filled in, what is answered, what is refused.</summary>
public sealed class ConversationTests
{
    [Fact]
    public void Ids_that_are_left_out_ascend_and_are_of_version_7()
    {
        var talk = new Talk();
        var ids = Enumerable.Range(0, 30).Select(i => Guid.Parse((string)talk.Did(SteelBook.Clicks(1, i % 3))["id"]!)).ToList();
        Assert.All(ids, id => Assert.True(EntryIds.IsVersion7(id)));
        Assert.Equal(ids.Select(i => i.ToString("D")).Order(StringComparer.Ordinal), ids.Select(i => i.ToString("D")));
        Assert.Equal(30, ids.Distinct().Count());
    }

    [Fact]
    public void Ids_ascend_too_where_the_book_was_opened_again()
    {
        var talk = Talk.After(SteelBook.Clicks(1, 1), SteelBook.Clicks(1, 1));
        var again = new Talk(book: talk.Book);
        again.Did(SteelBook.Clicks(2, 2));
        var ids = talk.Book.ReadAll().Select(s => s.Entry.Id.ToString("D")).ToList();
        Assert.Equal(3, ids.Distinct().Count());
        Assert.Equal(ids.Order(StringComparer.Ordinal), ids);
    }

    [Fact]
    public void Times_that_are_left_out_start_with_the_year_2000_and_go_on_by_the_minute()
    {
        var talk = Talk.After(SteelBook.Clicks(1, 1), SteelBook.Clicks(1, 1), """{"kind":"lap","minutes":2,"at":"2026-05-01T08:00:00+02:00"}""", SteelBook.Clicks(1, 1));
        Assert.Equal(
            [new DateTimeOffset(2000, 1, 1, 0, 0, 0, TimeSpan.Zero), new(2000, 1, 1, 0, 1, 0, TimeSpan.Zero), new(2026, 5, 1, 6, 0, 0, TimeSpan.Zero), new(2026, 5, 1, 6, 1, 0, TimeSpan.Zero)],
            talk.Book.ReadAll().Select(s => s.Entry.At.ToUniversalTime()));
    }

    [Fact]
    public void A_question_asks_about_the_time_of_the_last_entry_and_adds_nothing()
    {
        var talk = Talk.After(Talk.GoodFit);
        talk.Next();
        Assert.Equal(1, talk.Book.Count);
        Assert.Equal(new DateTimeOffset(2000, 1, 1, 0, 0, 0, TimeSpan.Zero), talk.With.AskedAt);
    }

    [Fact]
    public void The_unit_may_be_left_out_while_one_is_in_use()
    {
        var talk = Talk.After(SteelBook.Clicks(1, 1));
        Assert.Equal("mower", talk.Book.ReadAll()[0].Entry.Unit);
        var named = Talk.After("""{"kind":"clicks","left":1,"unit":"old one"}""", SteelBook.Clicks(1, 1));
        Assert.All(named.Book.ReadAll(), s => Assert.Equal("old one", s.Entry.Unit));
        Assert.Equal("old one", (string)named.Did("""{"ask":"steel"}""")["steel"]!["unit"]!);
    }

    [Fact]
    public void With_two_units_in_use_it_must_be_named()
    {
        var talk = Talk.After("""{"kind":"clicks","left":1,"unit":"a"}""", """{"kind":"clicks","left":1,"unit":"b"}""");
        Assert.Equal(("missing", "unit"), (talk.Fault(SteelBook.Clicks(1, 1)).Code, talk.Fault(SteelBook.Clicks(1, 1)).Field));
        Assert.Equal(("missing", "unit"), (talk.Fault("""{"ask":"next"}""").Code, talk.Fault("""{"ask":"steel"}""").Field));
        talk.Did("""{"kind":"clicks","left":1,"unit":"a"}""", """{"ask":"next","unit":"b"}""");
        Assert.Equal(2, talk.Did("""{"ask":"today"}""")["today"]!["steel"]!.AsArray().Count);
    }

    [Fact]
    public void A_unit_nobody_saw_before_starts_with_the_defaults()
    {
        // In a book without any, each name will do; once it has some, one that it does not know is a slip in a question, and starts a unit in an entry.
        var steel = new Talk().Did("""{"ask":"steel","unit":"never seen"}""")["steel"]!;
        Assert.Equal("never seen", (string)steel["unit"]!);
        var talk = Talk.After(SteelBook.Clicks(1, 1));
        Assert.Equal(("bad-value", "unit"), (talk.Fault("""{"ask":"steel","unit":"never seen"}""").Code, talk.Fault("""{"ask":"steel","unit":"never seen"}""").Field));
        talk.Did("""{"kind":"strip","um":80,"unit":"never seen"}""", """{"ask":"steel","unit":"never seen"}""");
        Assert.Equal(0, (int)steel["readings"]!);
        Assert.Equal(60, (double)steel["clearanceUm"]!["left"]!["mean"]!, 6);
    }

    [Theory]
    [InlineData("next")]
    [InlineData("steel")]
    [InlineData("today")]
    public void Every_answer_stands_under_its_questions_own_name(string ask)
    {
        var answer = Talk.After(Talk.GoodFit).Did($$"""{"ask":"{{ask}}"}""");
        Assert.Equal(["ok", ask], answer.Select(p => p.Key));
    }

    // The contract's table of questions: what `steel` holds.
    [Fact]
    public void The_answer_about_the_steel_has_all_fields_of_the_contract()
    {
        var steel = Talk.After(Talk.GoodFit, SteelBook.All("paper-cut", "nicks")).Did("""{"ask":"steel"}""")["steel"]!.AsObject();
        static void Q(JsonNode? q) => Assert.Equal(["mean", "sd", "p05", "p50", "p95"], q!.AsObject().Select(p => p.Key));
        foreach (var name in (string[])["clearanceUm", "edgeUm"])
        {
            foreach (var station in Stations.All) Q(steel[name]![station]);
        }
        foreach (var name in (string[])["clickUm", "openingUmPerHour"])
        {
            Q(steel[name]!["left"]);
            Q(steel[name]!["right"]);
        }
        Q(steel["usableGapUm"]);
        Q(steel["lapUmPerMinute"]);
        Q(steel["bowUm"]);
        Assert.NotNull(steel["lostMotionUm"]);
        var factor = (double)steel["scatterFactor"]![0]!["mean"]!;
        Assert.InRange(factor, 0.7, 2.8);
        Assert.Equal(6.5 * factor, (double)steel["scatterUm"]!["paper-cut"]!, 2e-3);
        Assert.Empty(steel["unusual"]!.AsArray());
        Assert.Equal(3, (int)steel["readings"]!);
    }

    // The contract's table of a step.
    [Fact]
    public void A_step_has_all_fields_of_the_contract()
    {
        var step = Talk.After(Talk.GoodFit).Next();
        foreach (var field in (string[])["do", "takesMinutes", "expect", "why", "cautions", "advice", "then"]) Assert.True(step.ContainsKey(field), field);
    }

    [Theory]
    [InlineData("contact", "light")]
    [InlineData("paper-cut", "nicks")]
    [InlineData("paper-drag", "slight")]
    [InlineData("torch", "thin")]
    [InlineData("swath", "ragged")]
    public void A_reading_is_answered_with_its_oddness_at_each_station_read(string kind, string word)
    {
        var answer = new Talk().Did($$"""{"kind":"{{kind}}","left":"{{word}}","right":"{{word}}"}""");
        Assert.Equal(["left", "right"], answer["surpriseAt"]!.AsObject().Select(p => p.Key));
        var least = answer["surpriseAt"]!.AsObject().Min(p => (double)p.Value!);
        Assert.Equal(1 - Math.Pow(1 - least, 2), (double)answer["surprise"]!, 1e-12);
    }

    [Fact]
    public void A_feeler_reading_has_its_oddness_too() =>
        Assert.InRange((double)new Talk().Did("""{"kind":"feeler","centre":{"goUm":30,"noGoUm":50}}""")["surpriseAt"]!["centre"]!, 1e-9, 1);

    [Fact]
    public void An_action_has_none()
    {
        foreach (var line in (string[])[SteelBook.Clicks(1, 1), SteelBook.Mow(1), SteelBook.Lap(2), """{"kind":"square-up"}""", """{"kind":"stone","what":"face"}""", """{"kind":"grind","what":"both"}""",
            """{"kind":"rebuild"}""", """{"kind":"strike"}""", """{"kind":"unit","blades":9}""", """{"kind":"strip","um":80}""", """{"kind":"work","what":"brush"}"""])
            Assert.Equal(["ok", "id"], new Talk().Did(line).Select(p => p.Key));
    }

    private const string Known = "\"id\":\"01900000-0000-7000-8000-000000000001\",\"at\":\"2026-05-01T08:00:00Z\"";

    [Fact]
    public void The_same_entry_twice_is_one_entry()
    {
        var line = $$"""{"kind":"clicks","left":1,{{Known}}}""";
        var talk = Talk.After(line, line);
        Assert.Equal(1, talk.Book.Count);
        var steel = talk.With.Say("""{"ask":"steel"}""");
        Assert.Equal(Talk.After(line).With.Say("""{"ask":"steel"}"""), steel);
    }

    [Fact]
    public void Another_entry_under_a_known_id_is_refused()
    {
        var talk = Talk.After($$"""{"kind":"clicks","left":1,{{Known}}}""");
        Assert.Equal("conflict", talk.Fault($$"""{"kind":"clicks","left":2,{{Known}}}""").Code);
        Assert.Equal(1, talk.Book.Count);
    }

    // Fact p3 of the trade: a click said to be 0.007 in would be several times the whole tolerance. Common practice, no source.
    [Fact]
    public void A_click_of_seven_thou_is_questioned_and_the_tenth_of_it_offered()
    {
        var talk = new Talk();
        const string Line = """{"kind":"unit","clickUm":177.8,"typed":{"clickUm":"0.007 in"}}""";
        var (code, field, message, remedy) = talk.Fault(Line);
        Assert.Equal(("implausible", "clickUm"), (code, field));
        Assert.Contains("17.8 µm (0.7 thou)", message, StringComparison.Ordinal);          // 0.0007 in
        Assert.Contains("17.78", remedy, StringComparison.Ordinal);
        Assert.Equal(0, talk.Book.Count);
        talk.Did("""{"kind":"unit","clickUm":177.8,"typed":{"clickUm":"0.007 in"},"confirmed":["clickUm"]}""");
        Assert.Equal(177.8, (double)talk.Did("""{"ask":"steel"}""")["steel"]!["clickUm"]!["left"]!["mean"]!, 6);
        talk.Did("""{"kind":"unit","clickUm":17.78,"typed":{"clickUm":"0.0007 in"}}""");
    }

    [Theory]
    [InlineData("""{"kind":"clicks","left":1""", "bad-json", "")]
    [InlineData("""[1,2]""", "bad-json", "")]
    [InlineData("""{"kind":"clicks","left":1,"left":2}""", "bad-json", "left")]
    [InlineData("""{"kind":"click","left":1}""", "unknown-kind", "kind")]
    [InlineData("""{"kind":"photo"}""", "unknown-kind", "kind")]
    [InlineData("""{"left":1}""", "missing", "kind")]
    [InlineData("""{"kind":"clicks"}""", "missing", "left")]
    [InlineData("""{"kind":"lap"}""", "missing", "minutes")]
    [InlineData("""{"kind":"lap","minutes":"two"}""", "bad-value", "minutes")]
    [InlineData("""{"kind":"contact","left":"hard"}""", "bad-value", "left")]
    [InlineData("""{"kind":"clicks","left":40}""", "implausible", "left")]
    [InlineData("""{"ask":"why","id":"next-1-00000000-x"}""", "unknown-id", "id")]
    [InlineData("""{"ask":"nxt"}""", "unknown-question", "ask")]
    [InlineData("""{"ask":"plan","days":0}""", "bad-value", "days")]
    [InlineData("""{"ask":"turf","date":"soon"}""", "bad-value", "date")]
    [InlineData("""{"ask":"next","aim":{"benchMm":600}}""", "bad-value", "benchMm")]
    [InlineData("""{"ask":"height","area":5}""", "bad-value", "area")]
    [InlineData("""{"ask":null}""", "missing", "ask")]
    [InlineData("""{"ask":7}""", "missing", "ask")]
    [InlineData("""{"ask":"why"}""", "missing", "id")]
    [InlineData("""{"ask":"next","atBench":"yes"}""", "bad-value", "atBench")]
    [InlineData("""{"ask":"next","atBench":1}""", "bad-value", "atBench")]
    [InlineData("""{"ask":"next","ahead":"on"}""", "bad-value", "ahead")]
    [InlineData("""{"ask":"next","priceOfMinute":0}""", "bad-value", "priceOfMinute")]
    [InlineData("""{"ask":"next","priceOfMinute":-1}""", "bad-value", "priceOfMinute")]
    [InlineData("""{"ask":"next","priceOfMinute":"1"}""", "bad-value", "priceOfMinute")]
    [InlineData("""{"ask":"next","priceOfMinute":1e999}""", "bad-value", "priceOfMinute")]
    [InlineData("""{"ask":"next","priceOfMinute":1000}""", "bad-value", "priceOfMinute")]
    public void A_line_that_cannot_be_taken_says_why_and_what_to_do(string line, string code, string field)
    {
        var talk = new Talk();
        var fault = talk.Fault(line);
        Assert.Equal((code, field), (fault.Code, fault.Field));
        Assert.True(fault.Message.Length > 5 && fault.Remedy.Length > 5);
        Assert.Equal(0, talk.Book.Count);
        talk.Did(SteelBook.Clicks(1, 1));                // and the pipe goes on
    }

    [Fact]
    public void A_near_miss_is_offered()
    {
        Assert.Contains("next", new Talk().Fault("""{"ask":"nxt"}""").Remedy, StringComparison.Ordinal);
        Assert.Contains("clicks", new Talk().Fault("""{"kind":"click","left":1}""").Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Null_in_a_question_is_absent() =>
        Assert.Equal(new Talk().With.Say("""{"ask":"next"}"""), new Talk().With.Say("""{"ask":"next","unit":null,"aim":null,"priceOfMinute":null,"atBench":null,"ahead":null}"""));

    [Fact]
    public void All_faults_of_a_line_are_named_where_there_are_several()
    {
        var answer = new Talk().Say("""{"kind":"lap","grit":"fine","minutes":"two"}""");
        Assert.Equal(["grit", "minutes"], answer["errors"]!.AsArray().Select(e => (string)e!["field"]!).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_voided_entry_is_gone_from_the_answers()
    {
        var with = Talk.After(Talk.GoodFit, SteelBook.All("contact", "heavy"));
        var id = with.Book.ReadAll()[1].Entry.Id;
        with.Did($$"""{"kind":"void","voids":"{{id:D}}"}""");
        Assert.Equal(0, (int)with.Did("""{"ask":"steel"}""")["steel"]!["readings"]!);
        Assert.Equal(Talk.After(Talk.GoodFit).With.Say("""{"ask":"steel"}"""), with.With.Say("""{"ask":"steel"}"""));
    }

    [Fact]
    public void A_clock_that_is_handed_in_gives_the_time()
    {
        var now = new DateTimeOffset(2026, 7, 1, 9, 30, 0, TimeSpan.FromHours(2));
        using var book = new MemoryBook();
        var talk = new Conversation(book, AdviceSettings.Default, Phrasing.Plain, new SequentialIds().Next, () => now);
        talk.Say(SteelBook.Clicks(1, 1));
        Assert.Equal(now, book.ReadAll()[0].Entry.At);
        Assert.Equal(now, talk.AskedAt);
    }

    [Fact]
    public void Questions_about_the_person_who_owns_no_paper_never_ask_for_paper()
    {
        var talk = Talk.After("""{"kind":"unit","owns":["gauge"]}""", Talk.GoodFit);
        for (var i = 0; i < 4; i++)
        {
            var step = talk.Next(",\"atBench\":true");
            Assert.DoesNotContain((string)step["do"]!, (string[])["paper-cut", "paper-drag", "torch", "feeler"]);
            talk.Did(SteelBook.Ends("contact", "none", "none"));
        }
    }
}
