using System.Text.Json.Nodes;
using Closemown.Tests.Pipe;
using Closemown.Tests.Steel;
using CsCheck;
using Xunit;

namespace Closemown.Tests.Advice;

/// <summary>The rules that no reckoning may overrule. All common practice, no source, unless named otherwise.</summary>
public sealed class NextStepTests
{
    private const string Strip = """{"kind":"strip","um":80,"sdUm":3}""";

    private static readonly string[] Checks = ["fit", "contact", "paper-cut", "paper-drag", "torch", "feeler"];

    private static string Do(params IEnumerable<string> lines) => Talk.After(lines).Do();

    private static string Contact(string left, string right) => SteelBook.Ends("contact", left, right);

    /// <summary>Steps of a plan that turn a side in: how far.</summary>
    private static double In(JsonObject step, string side) => (double?)step[side] ?? 0;

    [Fact]
    public void A_unit_new_to_the_book_is_first_looked_at_for_its_fit()
    {
        Assert.Equal("fit", new Talk().Do());
        Assert.Equal("fit", Do("""{"kind":"unit","blades":10}""", Strip));
        Assert.NotEqual("fit", Do(Talk.GoodFit));
    }

    [Theory]
    [InlineData("\"playLeft\":\"knocks\"")]
    [InlineData("\"playRight\":\"knocks\"")]
    [InlineData("\"knifeScrews\":\"loose\"")]
    [InlineData("\"adjusters\":\"slipping\"")]
    [InlineData("\"blades\":\"bent\"")]
    public void After_a_bad_fit_nothing_but_repair_until_it_is_put_right(string fault)
    {
        var talk = Talk.After($$"""{"kind":"fit",{{fault}}}""");
        // Loose screws need no taking apart.
        var repair = fault.Contains("loose", StringComparison.Ordinal) ? "knife-screws" : "repair";
        Assert.Equal(repair, talk.Do());
        talk.Did(SteelBook.All("contact", "none"), SteelBook.All("paper-cut", "folds"));
        Assert.Equal(repair, talk.Do());
        talk.Did(SteelBook.Clicks(1, 1), SteelBook.Mow(1));
        Assert.Equal(repair, talk.Do());
        Assert.NotEqual(repair, Talk.After([$$"""{"kind":"fit",{{fault}}}""", Talk.GoodFit]).Do());
        Assert.NotEqual(repair, Talk.After([$$"""{"kind":"fit",{{fault}}}""", """{"kind":"rebuild","what":["bearings"]}"""]).Do());
    }

    [Theory]
    [InlineData("\"playLeft\":\"felt\"")]
    [InlineData("\"adjusters\":\"stiff\"")]
    [InlineData("\"blades\":\"nicked\"")]
    public void A_little_play_a_stiff_adjuster_or_a_nick_is_no_reason_to_stop(string found) => Assert.NotEqual("repair", Do($$"""{"kind":"fit",{{found}}}"""));

    // Fact p4 of the trade: just put back together it is often tight at some place although it was right before.
    [Fact]
    public void After_a_rebuild_checks_come_first_not_a_turn_in()
    {
        var talk = Talk.After(Talk.GoodFit, Strip, Contact("light", "light"), SteelBook.All("paper-cut", "cuts"), SteelBook.Mow(1), """{"kind":"rebuild","what":["bearings"]}""");
        Assert.Equal("fit", talk.Do());
        talk.Did(Talk.GoodFit);
        var second = talk.Do();
        Assert.Contains(second, Checks);
        Assert.NotEqual("fit", second);
    }

    [Fact]
    public void After_a_strike_the_fit_is_looked_at()
    {
        var talk = Talk.After(Talk.GoodFit, Strip, Contact("light", "light"), SteelBook.Mow(1), """{"kind":"strike","where":"left"}""");
        var step = talk.Next();
        Assert.Equal("fit", (string)step["do"]!);
        Assert.Contains(Talk.Texts(step["cautions"]), c => c.Contains("burr", StringComparison.Ordinal));
        talk.Did(Talk.GoodFit);
        Assert.Contains(talk.Do(), Checks);
    }

    private static readonly Gen<string> ContactWord = Gen.Int[0, 2].Select(i => new[] { "none", "light", "heavy" }[i]);
    private static readonly Gen<string> PaperWord = Gen.Int[0, 2].Select(i => new[] { "cuts", "nicks", "folds" }[i]);

    private static readonly Gen<(string Left, string Right, string[] Lines)> FeltBooks =
        Gen.Select(Gen.Double[-30, 120], Gen.Select(ContactWord, ContactWord).Array[1, 4], Gen.Select(PaperWord, PaperWord, PaperWord).Array[0, 2], Gen.Bool).Select((gap, felt, paper, lapped) =>
            (felt[^1].Item1, felt[^1].Item2, (string[])
            [
                SteelBook.Known(gap), Talk.GoodFit, Strip, .. lapped ? (string[])[SteelBook.Lap(2)] : [],
                .. paper.Select(p => SteelBook.Three("paper-cut", p.Item1, p.Item2, p.Item3)), .. felt.Select(f => Contact(f.Item1, f.Item2)),
            ]));

    /// <summary>Forty felt books with the step that each calls for: one reckoning for several rules.</summary>
    private static readonly Lazy<List<(string Left, string Right, string Lines, List<JsonObject> Plan)>> Felt = new(() =>
        [.. FeltBooks.Array[40].Single().Select(b => (b.Left, b.Right, string.Join('\n', b.Lines), Talk.Plan(Talk.After(b.Lines).Next()).ToList()))]);

    private static bool Is(JsonObject step, params string[] kinds) => kinds.Contains((string)step["do"]!);

    [Fact]
    public void An_end_that_touched_gets_no_step_in_unless_a_lap_follows_in_the_same_plan()
    {
        foreach (var (left, right, lines, plan) in Felt.Value.Where(f => !f.Plan.Exists(s => Is(s, "lap"))))
        {
            if (left != "none") Assert.All(plan, s => Assert.True(In(s, "left") <= 0, lines + s.ToJsonString()));
            if (right != "none") Assert.All(plan, s => Assert.True(In(s, "right") <= 0, lines + s.ToJsonString()));
        }
        Assert.Contains(Felt.Value, f => f.Left != "none" && f.Plan.Exists(s => Is(s, "clicks")));
    }

    [Fact]
    public void After_a_heavy_touch_there_is_no_lap_and_no_mowing()
    {
        var heavy = Felt.Value.Where(f => f.Left == "heavy" || f.Right == "heavy").ToList();
        Assert.NotEmpty(heavy);
        Assert.All(heavy, f => Assert.DoesNotContain(f.Plan, s => Is(s, "lap", "mow")));
    }

    [Fact]
    public void No_go_is_more_than_two_clicks_a_side_and_no_round_more_than_two_minutes()
    {
        var steps = Felt.Value.SelectMany(f => f.Plan).ToList();
        Assert.Contains(steps, s => Is(s, "clicks"));
        foreach (var s in steps)
        {
            Assert.InRange((double?)s["left"] ?? 0, -2, 2);
            Assert.InRange((double?)s["right"] ?? 0, -2, 2);
            if (Is(s, "lap")) Assert.InRange((double)s["minutes"]!, 0.5, 2);
        }
    }

    [Fact]
    public void Every_plan_that_changes_the_nip_ends_with_both_ends_being_felt()
    {
        foreach (var (_, _, lines, plan) in Felt.Value.Where(f => f.Plan.Exists(s => Is(s, "clicks", "lap", "square-up", "stone"))))
        {
            // Both ends are felt, and after that only the strip is fed in, which comes last.
            var felt = plan.FindLastIndex(s => Is(s, "contact"));
            Assert.True(felt >= 0 && plan.Skip(felt + 1).All(s => Is(s, "paper-cut")), lines);
            Assert.Equal(["left", "right"], plan[felt]["stations"]!.AsArray().Select(s => (string)s!));
            for (var i = 0; i < plan.Count; i++) Assert.True(!Is(plan[i], "clicks") || Is(plan[i + 1], "contact", "lap"), "two goes without feeling in between: " + lines);
        }
    }

    [Fact]
    public void After_clicks_there_is_no_mowing_before_both_ends_were_felt()
    {
        Gen.Select(FeltBooks, Gen.Int[-2, 2], Gen.Int[-2, 2]).Where((_, l, r) => l != 0 || r != 0).Sample((b, l, r) =>
        {
            var talk = Talk.After([.. b.Lines, SteelBook.Clicks(l, r)]);
            Assert.NotEqual("mow", talk.Do());
            talk.Did($$"""{"kind":"contact","{{(r != 0 ? "left" : "right")}}":"none"}""");          // not the end that was turned, or not both
            Assert.NotEqual("mow", talk.Do());
        }, iter: 8, threads: 1);
    }

    // Fact p6 of the trade: turning up only the end that folds, time after time, makes a cone of the reel.
    [Fact]
    public void From_three_paper_checks_alone_the_ends_are_never_turned_against_each_other_by_more_than_one()
    {
        string[] words = ["cuts", "nicks", "folds"];
        foreach (var (l, c, r) in from l in words from c in words from r in words select (l, c, r))
        {
            var plan = Talk.Plan(Talk.After(Talk.GoodFit, Strip, SteelBook.Three("paper-cut", l, c, r)).Next()).ToList();
            Assert.All(plan, s => Assert.InRange(In(s, "left") - In(s, "right"), -1, 1));
            Assert.InRange(plan.Sum(s => In(s, "left") - In(s, "right")), -1, 1);
        }
    }

    [Fact]
    public void An_odd_reading_is_read_again_before_anything_is_turned()
    {
        string[] record = [SteelBook.Known(80, 5), Talk.GoodFit, Strip, .. Enumerable.Repeat(Contact("none", "none"), 6)];
        var talk = Talk.After([.. record, Contact("light", "light")]);
        var step = talk.Next();
        Assert.Equal("contact", (string)step["do"]!);
        Assert.Equal(["left", "right"], step["stations"]!.AsArray().Select(s => (string)s!));
        var why = talk.Did($$"""{"ask":"why","id":"{{(string)step["advice"]!}}"}""")["why"]!;
        Assert.Contains(why["rules"]!.AsArray(), r => (string)r!["id"]! == "read-again");
        Assert.Single(talk.Did("""{"ask":"steel"}""")["steel"]!["unusual"]!.AsArray());
        talk.Did(Contact("none", "none"));
        var after = talk.Next();
        Assert.DoesNotContain(talk.Did($$"""{"ask":"why","id":"{{(string)after["advice"]!}}"}""")["why"]!["rules"]!.AsArray(), r => (string)r!["id"]! == "read-again");
    }

    [Fact]
    public void Reading_again_can_be_declined()
    {
        var talk = Talk.After([SteelBook.Known(80, 5), Talk.GoodFit, Strip, .. Enumerable.Repeat(Contact("none", "none"), 6), Contact("light", "light")]);
        var id = (string)talk.Next()["advice"]!;
        bool ReadAgain() => talk.Did($$"""{"ask":"why","id":"{{(string)talk.Next()["advice"]!}}"}""")["why"]!["rules"]!.AsArray().Any(r => (string)r!["id"]! == "read-again");
        Assert.True(ReadAgain());
        talk.Did($$"""{"kind":"decline","advice":"{{id}}"}""");
        Assert.False(ReadAgain());
    }

    [Theory]
    [InlineData("ticks")]
    [InlineData("louder")]
    public void After_an_odd_sound_both_ends_are_felt_before_the_next_mowing(string sound)
    {
        string[] good = [SteelBook.Known(15, 4), Talk.GoodFit, Strip, Contact("none", "none"), SteelBook.All("paper-cut", "cuts"), SteelBook.Mow(1)];
        var talk = Talk.After([.. good, $$"""{"kind":"swath","left":"clean","right":"clean","sound":"{{sound}}"}"""]);
        Assert.Equal("contact", talk.Do());
        talk.Did(Contact("none", "none"));
        // Whatever comes now is asked for other reasons: the sound was felt after, and a quiet mower gives none.
        bool Heard(Talk t) => t.Next()["why"]!.AsArray().Any(w => ((string)w!).Contains("sound", StringComparison.Ordinal));
        Assert.False(Heard(talk));
        Assert.False(Heard(Talk.After([.. good, """{"kind":"swath","left":"clean","right":"clean","sound":"quiet"}"""])));
        Assert.True(Heard(Talk.After([.. good, $$"""{"kind":"swath","left":"clean","right":"clean","sound":"{{sound}}"}"""])));
    }

    [Theory]
    [InlineData("light")]
    [InlineData("none")]
    public void After_three_rounds_of_lapping_in_vain_no_lap_is_on_offer(string felt)
    {
        // The paper folds as before each time; the sitting after is another one, but the laps were still in vain.
        var talk = Talk.After(Talk.GoodFit, """{"kind":"strip","um":80,"cutsToUm":36,"foldsFromUm":56}""", Contact(felt, felt), SteelBook.All("paper-cut", "folds"), SteelBook.All("torch", "wide"));
        for (var i = 0; i < 3; i++) talk.Did(SteelBook.Lap(2), Contact(felt, felt), SteelBook.All("torch", "wide"), SteelBook.All("paper-cut", "folds"));
        talk.Did("""{"kind":"locked","at":"2000-01-02T08:00:00Z"}""");
        var step = talk.Next();
        Assert.DoesNotContain(Talk.Plan(step), s => Is(s, "lap"));
        var why = talk.Did($$"""{"ask":"why","id":"{{(string)step["advice"]!}}"}""")["why"]!;
        Assert.DoesNotContain(why["alternatives"]!.AsArray(), a => (string)a!["do"]! == "lap");
    }

    // Worn too far for a few rounds of lapping, at a good gap.
    [Fact]
    public void A_very_blunt_edge_at_a_good_gap_is_lapped_before_any_file_or_grinder()
    {
        var talk = Talk.After("""{"kind":"unit","priors":{"clearanceUm":[10,2],"edgeUm":[28,2],"bowUm":[0,1]},"owns":["strip","torch","grinder"] }""", Talk.GoodFit, Strip, Contact("none", "none"), SteelBook.All("paper-cut", "folds"), SteelBook.All("torch", "wide"));
        string Read(string kind) => kind == "contact" ? SteelBook.All("contact", "none") : SteelBook.All(kind, kind == "torch" ? "wide" : "folds");
        for (var k = 0; k < 12 && talk.Do() is "contact" or "paper-cut" or "torch"; k++) talk.Did(Read(talk.Do()));
        var plan = Talk.Plan(talk.Next()).Select(s => (string)s["do"]!).ToList();
        Assert.Contains("lap", plan);
        Assert.DoesNotContain("stone", plan);
        Assert.DoesNotContain("grind", plan);
    }

    [Fact]
    public void There_is_never_a_fourth_round_of_lapping_in_a_sitting()
    {
        Gen.Select(FeltBooks, Gen.Int[3, 4]).Sample((b, rounds) =>
        {
            var talk = Talk.After([.. b.Lines.Where(l => !l.Contains("lap", StringComparison.Ordinal)), .. Enumerable.Repeat(SteelBook.Lap(2), rounds), Contact("light", "light"), SteelBook.All("paper-cut", "folds")]);
            Assert.DoesNotContain(Talk.Plan(talk.Next()), s => (string)s["do"]! == "lap");
        }, iter: 8, threads: 1);
    }
}
