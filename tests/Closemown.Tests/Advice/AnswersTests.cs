using System.Text.Json.Nodes;
using Closemown.Quantities;
using Closemown.Tests.Pipe;
using Closemown.Tests.Steel;
using CsCheck;
using Xunit;

namespace Closemown.Tests.Advice;

/// <summary>Plans, ids, cautions, words and prices of the next step.</summary>
public sealed class AnswersTests
{
    private const string Strip = """{"kind":"strip","um":80,"sdUm":3}""";
    private const string Light = """{"kind":"contact","left":"light","right":"light"}""";
    private const string None = """{"kind":"contact","left":"none","right":"none"}""";
    private static readonly string[] Wide = [SteelBook.Known(60, 6), Talk.GoodFit, Strip, None];
    private static readonly string[] Blunt = [SteelBook.Known(10, 28), Talk.GoodFit, Strip, None, SteelBook.All("paper-cut", "folds"), SteelBook.All("torch", "wide")];
    private static readonly string[] Dull = ["""{"kind":"unit","relief":"yes"}""", SteelBook.Known(30, 24), Talk.GoodFit, Strip, None, SteelBook.All("paper-cut", "folds")];
    private static readonly string[] Good = [SteelBook.Known(15, 4), Talk.GoodFit, Strip, None, SteelBook.All("paper-cut", "cuts")];
    private static readonly string[][] Books = [[], [Talk.GoodFit], Wide, Blunt, Good, [.. Good, SteelBook.Mow(1)], [Talk.GoodFit, Strip, SteelBook.Three("paper-cut", "cuts", "cuts", "folds")],
        ["""{"kind":"fit","playLeft":"knocks"}"""], [.. Good, """{"kind":"strike"}"""], [.. Good, SteelBook.Ends("contact", "heavy", "none")], ["""{"kind":"unit","inTurns":"clockwise","grits":[80,120]}""", .. Wide]];

    private static string EntryFor(JsonObject step)
    {
        switch ((string)step["do"]!)
        {
            case "clicks":
                return SteelBook.Clicks((double?)step["left"] ?? 0, (double?)step["right"] ?? 0);
            case "lap":
                return SteelBook.Lap((double)step["minutes"]!);
            default:
                throw new InvalidOperationException(step.ToJsonString());
        }
    }

    [Fact]
    public void A_plan_that_was_begun_goes_on_step_by_step()
    {
        foreach (var book in (string[][])[Wide, Dull])
        {
            var talk = Talk.After(book);
            var plan = Talk.Plan(talk.Next()).ToList();
            Assert.True(plan.Count >= 2, plan[0].ToJsonString());
            for (var i = 0; (string)plan[i]["do"]! is "clicks" or "lap"; i++)
            {
                talk.Did(EntryFor(plan[i]));
                var next = talk.Next();
                foreach (var field in (string[])["do", "left", "right", "minutes"]) Assert.Equal(plan[i + 1][field]?.ToJsonString(), next[field]?.ToJsonString());
                Assert.Equal(plan.Count - i - 2, next["then"]!.AsArray().Count);
            }
        }
    }

    [Fact]
    public void A_plan_stops_when_something_else_was_done_or_read()
    {
        var talk = Talk.After(Wide);
        var first = talk.Next();
        Assert.Equal("clicks", (string)first["do"]!);
        bool GoesOn(Talk t) => t.Did($$"""{"ask":"why","id":"{{(string)t.Next()["advice"]!}}"}""")["why"]!["rules"]!.AsArray().Any(r => (string)r!["id"]! == "plan-goes-on");
        var asAdvised = Talk.After([.. Wide, EntryFor(first)]);
        Assert.True(GoesOn(asAdvised));
        var otherwise = Talk.After([.. Wide, SteelBook.Clicks(-1, 0)]);
        Assert.False(GoesOn(otherwise));
        var between = Talk.After([.. Wide, EntryFor(first), Light]);
        Assert.False(GoesOn(between));
    }

    [Fact]
    public void An_answer_can_be_given_again_byte_by_byte()
    {
        foreach (var book in Books.Where((_, i) => i % 2 == 1))
        {
            string Ask() => Talk.After(book).With.Say("""{"ask":"next"}""");
            Assert.Equal(Ask(), Ask());
            var talk = Talk.After(book);
            var once = talk.With.Say("""{"ask":"next"}""");
            talk.With.Say("""{"ask":"steel"}""");
            Assert.Equal(once, talk.With.Say("""{"ask":"next"}"""));
        }
    }

    [Fact]
    public void Why_gives_the_same_step_again_from_its_id_alone_whatever_came_after()
    {
        foreach (var book in Books.Where((_, i) => i % 2 == 0))
        {
            var talk = Talk.After(book);
            foreach (var more in (string[])["", ",\"atBench\":true,\"priceOfMinute\":3"])
            {
                var step = talk.Next(more);
                var id = (string)step["advice"]!;
                var later = new Talk(book: talk.Book);
                Assert.Equal(step.ToJsonString(), later.Did($$"""{"ask":"why","id":"{{id}}"}""")["why"]!["step"]!.ToJsonString());
            }
        }
        var old = Talk.After(Wide);
        var then = old.Next();
        old.Did(SteelBook.Clicks(2, 2), Light, SteelBook.Mow(1));
        Assert.Equal(then.ToJsonString(), old.Did($$"""{"ask":"why","id":"{{(string)then["advice"]!}}"}""")["why"]!["step"]!.ToJsonString());
    }

    [Fact]
    public void Why_tells_reasons_rules_with_source_and_alternatives_best_first()
    {
        var talk = Talk.After(Wide);
        var why = talk.Did($$"""{"ask":"why","id":"{{(string)talk.Next()["advice"]!}}"}""")["why"]!;
        Assert.NotEmpty(why["reasons"]!.AsArray());
        Assert.All(why["rules"]!.AsArray(), r => Assert.NotEmpty((string)r!["source"]!));
        var ids = talk.Book.ReadAll().Select(s => s.Entry.Id.ToString("D"));
        Assert.All(why["entries"]!.AsArray(), e => Assert.Contains((string)e!, ids));
        Assert.NotEmpty(why["entries"]!.AsArray());
        var losses = why["alternatives"]!.AsArray().Where(a => a!["expectedLoss"] is not null).Select(a => (double)a!["expectedLoss"]!).Take(4).ToList();
        Assert.True(losses.Count > 1);
        Assert.Equal(losses.Order(), losses);
    }

    [Theory]
    [InlineData("next-1")]
    [InlineData("")]
    [InlineData("next-0-0-")]
    [InlineData("next-0-0-%%%")]
    [InlineData("next--1-0-bW93ZXI")]
    [InlineData("next-99999-00000000-bW93ZXI")]
    public void An_id_that_is_none_is_refused(string id) => Assert.Equal("unknown-id", Talk.After(Wide).Fault($$"""{"ask":"why","id":"{{id}}"}""").Code);

    [Fact]
    public void The_id_of_another_books_advice_is_refused()
    {
        var other = Talk.After([.. Wide, Light]);
        var id = (string)other.Next()["advice"]!;
        Assert.Equal(("unknown-id", "id"), (Talk.After([.. Wide, None]).Fault($$"""{"ask":"why","id":"{{id}}"}""").Code, "id"));
        Assert.Equal("unknown-id", Talk.After(Wide).Fault($$"""{"ask":"why","id":"{{id}}"}""").Code);
    }

    [Fact]
    public void A_unit_may_have_any_name_and_its_advice_can_still_be_asked_why()
    {
        foreach (var name in (string[])["my best", "grüne Walze – 2", "a|b-c", "{reel}", "\\\"quoted\\\""])
        {
            var talk = Talk.After($$"""{"kind":"fit","playLeft":"none","unit":"{{name}}"}""");
            var step = talk.Next();
            Assert.Equal(step.ToJsonString(), talk.Did($$"""{"ask":"why","id":"{{(string)step["advice"]!}}"}""")["why"]!["step"]!.ToJsonString());
        }
    }

    [Fact]
    public void Looking_ahead_ordinary_units_end_with_mowing()
    {
        foreach (var book in (string[][])[Wide, Blunt, Dull, Good])
        {
            var next = Talk.After(book).Next(",\"ahead\":true");
            var last = next["ahead"]!.AsArray().Select(s => (string)s!["do"]!).LastOrDefault() ?? (string)next["do"]!;
            Assert.Equal("mow", last);
            Assert.All(next["ahead"]!.AsArray(), s => Assert.Null(s!["advice"]));
        }
    }

    [Fact]
    public void Looking_ahead_stops_after_twenty_steps_where_too_little_is_known()
    {
        // Each check is taken to show what is most probable, so an unknown unit need not come to an end.
        var next = new Talk().Next(",\"ahead\":true");
        var steps = next["ahead"]!.AsArray().Select(s => (string)s!["do"]!).Prepend((string)next["do"]!).ToList();
        Assert.Equal("fit", steps[0]);
        Assert.True(steps[^1] == "mow" || steps.Count == 20, string.Join(' ', steps));
    }

    [Fact]
    public void Looking_ahead_changes_neither_the_step_nor_the_book()
    {
        foreach (var book in (string[][])[[Talk.GoodFit], Wide, Good])
        {
            var talk = Talk.After(book);
            var plain = talk.Next();
            var ahead = talk.Next(",\"ahead\":true");
            ahead.Remove("ahead");
            Assert.Equal(plain.ToJsonString(), ahead.ToJsonString());
            Assert.Equal(book.Length, talk.Book.Count);
        }
    }

    [Fact]
    public void Away_from_the_bench_a_good_unit_is_mown_with_and_told_when_the_bench_is_due()
    {
        var talk = Talk.After([.. Good, SteelBook.Mow(1)]);
        var step = talk.Next();
        Assert.Equal("mow", (string)step["do"]!);
        Assert.True((int)step["expect"]!["benchInMowings"]! >= 1);
        Assert.Contains("Bench check", (string)step["say"]!, StringComparison.Ordinal);
        Assert.InRange((double)step["expect"]!["inTolerance"]!, 0.5, 1);
        Assert.Equal(0, (double)step["takesMinutes"]!);
    }

    [Fact]
    public void A_unit_that_opens_faster_is_due_at_the_bench_sooner()
    {
        int Due(double rate) => Talk.After([FormattableString.Invariant($$"""{"kind":"unit","priors":{"openingUmPerHour":[{{rate}},0.3]} }"""), .. Good, SteelBook.Mow(1)]).Next() is var step && (string)step["do"]! == "mow" ? (int?)step["expect"]!["benchInMowings"] ?? 1000 : 0;
        Assert.True(Due(6) < Due(1), $"{Due(6)} and {Due(1)}");
    }

    [Fact]
    public void Regular_mowings_give_the_bench_forecast_in_days()
    {
        var talk = Talk.After(Good);
        talk.Did("""{"kind":"mow","hours":0.5,"at":"2026-05-01T08:00:00Z"}""", """{"kind":"mow","hours":0.5,"at":"2026-05-04T08:00:00Z"}""");
        var step = talk.Next();
        Assert.Equal("mow", (string)step["do"]!);
        Assert.Equal(3.0 * (int)step["expect"]!["benchInMowings"]!, (double)step["expect"]!["benchInDays"]!, 9);
    }

    private static readonly string[] CheckKinds = ["contact", "paper-cut", "paper-drag", "torch", "feeler"];

    [Fact]
    public void Who_prices_minutes_higher_is_never_asked_for_more_minutes_of_checks()
    {
        foreach (var book in (string[][])[[Talk.GoodFit, Strip], [.. Good, SteelBook.Mow(1), SteelBook.Mow(1)]])
        {
            var talk = Talk.After(book);
            double Minutes(double price)
            {
                var next = talk.Next(FormattableString.Invariant($",\"priceOfMinute\":{price},\"atBench\":true"));
                return Talk.Plan(next).Where(s => CheckKinds.Contains((string)s["do"]!)).Take((string)next["do"]! is "clicks" or "lap" ? 0 : 2).Sum(s => (double)s["takesMinutes"]!);
            }
            double[] minutes = [.. ((double[])[0.25, 1, 20]).Select(Minutes)];
            Assert.Equal(minutes.OrderDescending(), minutes);
        }
    }

    // Fact p10 of the trade and the cautions: common practice, no source.
    [Fact]
    public void Cautions_come_before_the_first_step_of_their_kind_in_a_sitting_and_not_again()
    {
        static bool Brake(JsonObject step) => Talk.Texts(step["cautions"]).Any(c => c.Contains("brake or drive", StringComparison.Ordinal));
        static bool Hands(JsonObject step) => Talk.Texts(step["cautions"]).Any(c => c.Contains("Before hands go near", StringComparison.Ordinal));

        // Away from the bench with nothing known of the gap but that something sounds wrong: contact is asked.
        var talk = Talk.After(SteelBook.Known(15, 4), Talk.GoodFit, Strip, SteelBook.Mow(1), """{"kind":"swath","left":"clean","sound":"ticks"}""");
        var first = talk.Next();
        Assert.Equal("contact", (string)first["do"]!);
        Assert.True(Brake(first) && Hands(first), first.ToJsonString());

        // Felt once, the brake is not said again in the same sitting; making safe is, until something was done. A sitting later both are back.
        talk.Did(None, """{"kind":"swath","left":"clean","sound":"ticks"}""");
        var again = talk.Next();
        Assert.Equal("contact", (string)again["do"]!);
        Assert.True(!Brake(again) && Hands(again), again.ToJsonString());
        talk.Did(SteelBook.Clicks(-1, -1), """{"kind":"swath","left":"clean","sound":"ticks"}""");
        Assert.False(Hands(talk.Next()));
        talk.Did(SteelBook.Mow(1), """{"kind":"swath","left":"clean","sound":"ticks"}""");
        var later = talk.Next();
        Assert.True(Brake(later) && Hands(later), later.ToJsonString());
    }

    [Fact]
    public void Before_the_first_lap_of_a_sitting_goggles_and_the_brake_are_named()
    {
        var plan = Talk.Plan(Talk.After(Dull).Next()).ToList();
        var lap = plan.Find(s => (string)s["do"]! == "lap");
        Assert.NotNull(lap);
        Assert.Contains(Talk.Texts(lap["cautions"]), c => c.Contains("Goggles", StringComparison.Ordinal));
    }

    [Fact]
    public void Before_a_turn_of_the_adjusters_the_way_back_is_named()
    {
        var step = Talk.After(Wide).Next();
        Assert.Equal("clicks", (string)step["do"]!);
        Assert.Contains(Talk.Texts(step["cautions"]), c => c.Contains("Never from a turn of the adjuster straight to mowing", StringComparison.Ordinal));
    }

    public static TheoryData<string> Styles => ["plain", "american", "british", "comma"];

    private static WritingStyle Style(string name) => name switch { "american" => WritingStyle.American, "british" => WritingStyle.British, "comma" => WritingStyle.CommaMetric, _ => WritingStyle.Plain };

    [Theory]
    [MemberData(nameof(Styles))]
    public void Every_sentence_is_whole_in_every_way_of_writing(string style)
    {
        var said = 0;
        foreach (var book in Books.Where((b, i) => style == "plain" || i % 2 == 0))
        {
            var talk = new Talk(Style(style));
            talk.Did(book);
            var next = talk.Next(book == Wide ? ",\"ahead\":true" : "");
            var why = talk.Did($$"""{"ask":"why","id":"{{(string)next["advice"]!}}"}""");
            foreach (var text in Talk.Texts(next).Concat(Talk.Texts(why)))
            {
                Assert.DoesNotContain('{', text);
                Assert.DoesNotContain('}', text);
                said++;
            }
        }
        Assert.True(said > 100);
    }

    [Fact]
    public void An_american_reads_thou_and_a_german_hundredths_with_a_comma()
    {
        string Why(WritingStyle style)
        {
            var talk = new Talk(style);
            talk.Did(Wide);
            return string.Join(' ', Talk.Texts(talk.Did($$"""{"ask":"why","id":"{{talk.Next()["advice"]}}"}""")["why"]!["reasons"]));
        }
        Assert.Contains("µm", Why(WritingStyle.Plain), StringComparison.Ordinal);
        Assert.Contains("thou", Why(WritingStyle.American), StringComparison.Ordinal);
        Assert.DoesNotContain("µm", Why(WritingStyle.American), StringComparison.Ordinal);
        Assert.Matches("[0-9],[0-9]", Why(WritingStyle.CommaMetric));
        Assert.NotEqual(Why(WritingStyle.American), Why(WritingStyle.British));
    }

    [Fact]
    public void What_a_check_is_expected_to_show_adds_up_to_certainty()
    {
        foreach (var book in Books)
        {
            foreach (var step in Talk.Plan(Talk.After(book).Next()).Where(s => CheckKinds.Contains((string)s["do"]!)))
            {
                foreach (var station in step["stations"]!.AsArray().Select(s => (string)s!))
                {
                    if (step["expect"]![station] is not JsonObject p) continue;
                    Assert.Equal(1, p.Sum(x => (double)x.Value!), 9);
                }
            }
        }
    }

    [Fact]
    public void No_book_breaks_the_advice()
    {
        RandomBooks.OfUpTo(25).Sample(bodies =>
        {
            var talk = Talk.After(bodies);
            var next = talk.Next();
            Assert.NotEmpty((string)next["say"]!);
            Assert.NotEmpty(next["why"]!.AsArray());
            Assert.True((double)next["takesMinutes"]! >= 0);
            Assert.Equal(next.ToJsonString(), talk.Did($$"""{"ask":"why","id":"{{(string)next["advice"]!}}"}""")["why"]!["step"]!.ToJsonString());
        }, iter: 15, threads: 1);
    }

    [Fact]
    public void An_advice_is_not_touched_by_another_units_entries()
    {
        var alone = Talk.After(Wide).Next(",\"unit\":\"mower\"");
        var both = new Talk();
        both.Did(Wide);
        both.Did("""{"kind":"lap","minutes":2,"unit":"other","at":"1999-01-01T00:00:00Z"}""", """{"kind":"contact","left":"heavy","unit":"other","at":"2000-01-01T00:03:00Z"}""");
        var with = both.Next(",\"unit\":\"mower\"");
        alone.Remove("advice");
        with.Remove("advice");
        Assert.Equal(alone.ToJsonString(), with.ToJsonString());
    }
}
