using Closemown.Entries;
using Closemown.Steel;
using CsCheck;
using Xunit;

namespace Closemown.Tests.Steel;

/// <summary>What entries do to the belief: the laws that a person with a screwdriver in hand would expect.</summary>
public sealed class WholeModelTests
{
    private static double Mean(SteelBelief b, int station) => b.ClearanceUm(station).Mean;

    [Fact]
    public void A_new_unit_is_wide_and_honest()
    {
        // 60 ± 80 at the ends (starting values; assumption, no source): nine tenths of a bell of that spread lie within ± 1.645 × 80.
        var b = SteelBook.Belief("""{"kind":"locked"}""");
        var ends = SteelBook.Belief("""{"kind":"unit","stationAtMm":[-280,0,280]}""");
        Assert.Equal(60 - (1.645 * 80), ends.ClearanceUm(0).P05, 0.5);
        Assert.Equal(60 + (1.645 * 80), ends.ClearanceUm(2).P95, 0.5);
        for (var s = 0; s < 3; s++)
        {
            Assert.InRange(b.ClearanceUm(s).P05, -80, -45);
            Assert.InRange(b.ClearanceUm(s).P95, 165, 200);
            Assert.Equal(15, b.EdgeUm(s).Mean, 6);
        }
        Assert.Equal(0, b.TiltClicks.Mean, 6);
        Assert.True(b.TiltClicks.P05 < -3 && b.TiltClicks.P95 > 3);
        Assert.Equal(b.OpeningUmPerHour(0), b.OpeningUmPerHour(1), (x, y) => Math.Abs(x.Mean - y.Mean) < 1e-9 && Math.Abs(x.Sd - y.Sd) < 1e-9);
    }

    [Fact]
    public void A_click_in_closes_by_about_a_click_and_out_opens_by_as_much()
    {
        // No reading in between: the move is the click, less half the lost motion where the last direction is not known.
        var before = SteelBook.Belief(SteelBook.Known(40));
        var half = SteelDefaults.LostMotionUm.Mean / 2;
        var closed = SteelBook.Belief(SteelBook.Known(40), SteelBook.Clicks(1, 1));
        var opened = SteelBook.Belief(SteelBook.Known(40), SteelBook.Clicks(-1, -1));
        for (var s = 0; s < 3; s++)
        {
            Assert.Equal(Mean(before, s) - (19 - half), Mean(closed, s), 1e-6);
            Assert.Equal(Mean(before, s) + (19 - half), Mean(opened, s), 1e-6);
            Assert.True(closed.ClearanceUm(s).Sd > before.ClearanceUm(s).Sd);
        }
    }

    [Fact]
    public void Only_a_change_of_direction_loses_motion()
    {
        double Left(params string[] moves) => Mean(SteelBook.Belief([SteelBook.Known(60), """{"kind":"unit","stationAtMm":[-280,0,280]}""", .. moves]), 0);
        var first = Left(SteelBook.Clicks(1, 0));
        Assert.Equal(19, first - Left(SteelBook.Clicks(1, 0), SteelBook.Clicks(1, 0)), 1e-6);           // on in the same direction: a whole click
        Assert.Equal(19 - 5, Left(SteelBook.Clicks(1, 0), SteelBook.Clicks(-1, 0)) - first, 1e-6);      // back: the lost motion is missing
        Assert.Equal(19, first - Left(SteelBook.Clicks(1, 0), SteelBook.Clicks(0, -2), SteelBook.Clicks(1, 0)), 1e-6);   // the other side does not matter
    }

    [Fact]
    public void A_click_on_one_side_moves_that_end_and_half_the_centre()
    {
        var b = SteelBook.Belief(SteelBook.Known(60), """{"kind":"unit","stationAtMm":[-280,0,280]}""");
        var c = SteelBook.Belief(SteelBook.Known(60), """{"kind":"unit","stationAtMm":[-280,0,280]}""", SteelBook.Clicks(2, 0));
        var moved = Mean(b, 0) - Mean(c, 0);
        Assert.InRange(moved, 30, 38);
        Assert.Equal(moved / 2, Mean(b, 1) - Mean(c, 1), 1e-6);
        Assert.Equal(Mean(b, 2), Mean(c, 2), 1e-6);
    }

    [Fact]
    public void A_mowing_opens_and_dulls_by_the_stated_rates()
    {
        var before = SteelBook.Belief(SteelBook.Known(60));
        var after = SteelBook.Belief(SteelBook.Known(60), SteelBook.Mow(2));
        for (var s = 0; s < 3; s++)
        {
            Assert.Equal(0.4 + (2 * 3.5), Mean(after, s) - Mean(before, s), 1e-3);      // starting values: an outing and two hours
            Assert.Equal(2 * 1.2, after.EdgeUm(s).Mean - before.EdgeUm(s).Mean, 1e-3);
            Assert.True(after.ClearanceUm(s).Sd > before.ClearanceUm(s).Sd);
        }
    }

    [Fact]
    public void A_pressed_pair_opens_faster_and_blunts_more()
    {
        double Opened(double at) => Mean(SteelBook.Belief(SteelBook.Known(at), SteelBook.Mow(1)), 0) - Mean(SteelBook.Belief(SteelBook.Known(at)), 0);
        double Blunted(double at) => SteelBook.Belief(SteelBook.Known(at), SteelBook.Mow(1)).EdgeUm(0).Mean;
        Assert.True(Opened(-20) > Opened(40) + 4);
        Assert.True(Blunted(-20) > Blunted(40) + 0.5);
    }

    [Fact]
    public void Topdressing_dulls_faster_and_wears_off_mowing_by_mowing()
    {
        const string Dressed = """{"kind":"work","what":"topdress","kgM2":1}""";
        var plain = SteelBook.Belief(SteelBook.Known(60), SteelBook.Mow(1)).EdgeUm(1).Mean - 15;
        double Grown(int mowings) => SteelBook.Belief([SteelBook.Known(60), Dressed, .. Enumerable.Repeat(SteelBook.Mow(1), mowings)]).EdgeUm(1).Mean - 15;
        // Eight times, halving each mowing (starting values; assumption, no source): of 8, 4.5 and so on.
        Assert.Equal(8 * plain, Grown(1), 0.01);
        Assert.Equal((8 + 4.5) * plain, Grown(2), 0.02);
        Assert.True(Grown(12) - Grown(11) < 1.2 * plain);
    }

    [Fact]
    public void A_lap_opens_and_sharpens_where_the_pair_stands_close()
    {
        var before = SteelBook.Belief(SteelBook.Known(5));
        var after = SteelBook.Belief(SteelBook.Known(5), SteelBook.Lap(2));
        for (var s = 0; s < 3; s++)
        {
            // 5 µm a minute at full bite; half the bluntness above fresh in about two minutes (starting values).
            Assert.InRange(Mean(after, s) - Mean(before, s), 7, 10);
            Assert.InRange(after.EdgeUm(s).Mean, 3 + (0.4 * 12), 3 + (0.65 * 12));
        }
    }

    [Fact]
    public void A_lap_does_little_where_the_pair_stands_wide()
    {
        var before = SteelBook.Belief(SteelBook.Known(70));
        var after = SteelBook.Belief(SteelBook.Known(70), SteelBook.Lap(2));
        for (var s = 0; s < 3; s++)
        {
            Assert.InRange(Mean(after, s) - Mean(before, s), 0, 0.1);
            Assert.InRange(before.EdgeUm(s).Mean - after.EdgeUm(s).Mean, 0, 0.1);
        }
    }

    [Fact]
    public void A_relief_grind_laps_sharper_than_none()
    {
        double Edge(string relief) => SteelBook.Belief(SteelBook.Known(5), $$"""{"kind":"unit","relief":"{{relief}}"}""", SteelBook.Lap(2)).EdgeUm(1).Mean;
        Assert.True(Edge("yes") < Edge("no") - 2);
    }

    private static readonly string[] WellKnown =
        [SteelBook.Known(20, 8), SteelBook.Ends("contact", "none", "none"), SteelBook.Clicks(1, 1), SteelBook.Ends("contact", "light", "light"), SteelBook.All("paper-cut", "cuts")];

    [Fact]
    public void A_rebuild_makes_the_clearance_new_and_wide()
    {
        var b = SteelBook.Belief([.. WellKnown, """{"kind":"rebuild","what":["bearings"]}"""]);
        Assert.True(SteelBook.Belief(WellKnown).ClearanceUm(0).Sd < 10);
        for (var s = 0; s < 3; s++) Assert.InRange(b.ClearanceUm(s).Sd, 25, 45);
        Assert.Equal(40, Mean(b, 0), 1e-6);
    }

    [Theory]
    [InlineData("", 5, 8)]
    [InlineData(",\"newKnife\":true", 39, 41)]
    [InlineData(",\"newKnife\":true,\"groundOnBar\":true", 5.9, 6.1)]
    public void A_rebuild_makes_the_bow_as_uncertain_as_the_knife_is_new(string more, double low, double high) =>
        Assert.InRange(SteelBook.Belief([.. WellKnown, $$"""{"kind":"rebuild"{{more}}}"""]).BowUm.Sd, low, high);

    [Fact]
    public void Ground_both_the_edges_are_fresh_and_the_clearance_unknown()
    {
        var b = SteelBook.Belief([.. WellKnown, """{"kind":"grind","what":"both"}"""]);
        for (var s = 0; s < 3; s++)
        {
            Assert.Equal(2, b.EdgeUm(s).Mean, 1e-6);
            Assert.InRange(b.EdgeUm(s).Sd, 0.95, 1.05);
            Assert.True(b.ClearanceUm(s).Sd > 50);
        }
    }

    [Fact]
    public void Ground_on_one_side_only_the_edge_is_half_as_blunt_and_less_sure()
    {
        var before = SteelBook.Belief(SteelBook.Known(20, 15));
        var b = SteelBook.Belief(SteelBook.Known(20, 15), """{"kind":"grind","what":"reel"}""");
        Assert.InRange(b.EdgeUm(1).Mean, 7, 10);
        Assert.True(b.EdgeUm(1).Sd > 1);
        Assert.True(before.EdgeUm(1).Mean > b.EdgeUm(1).Mean);
    }

    [Theory]
    [InlineData("left", 0)]
    [InlineData("centre", 1)]
    [InlineData("right", 2)]
    public void A_strike_blunts_where_it_hit_and_makes_that_place_least_sure(string where, int hit)
    {
        var before = SteelBook.Belief(WellKnown);
        var b = SteelBook.Belief([.. WellKnown, $$"""{"kind":"strike","where":"{{where}}"}"""]);
        for (var s = 0; s < 3; s++)
        {
            Assert.True(b.ClearanceUm(s).Sd > before.ClearanceUm(s).Sd);
            if (s == hit) Assert.Equal(before.EdgeUm(s).Mean + 12, b.EdgeUm(s).Mean, 1e-6);
            else Assert.Equal(before.EdgeUm(s).Mean, b.EdgeUm(s).Mean, 1e-6);
        }
        Assert.Equal(hit, Enumerable.Range(0, 3).MaxBy(s => b.ClearanceUm(s).Sd));
    }

    [Fact]
    public void Squared_up_both_ends_stand_at_the_strip()
    {
        var b = SteelBook.Belief("""{"kind":"strip","um":80,"sdUm":2}""", """{"kind":"unit","stationAtMm":[-280,0,280]}""", """{"kind":"square-up"}""");
        foreach (var s in (int[])[0, 2])
        {
            Assert.Equal(80, Mean(b, s), 2.0);
            Assert.InRange(b.ClearanceUm(s).Sd, 4, 12);
        }
        Assert.InRange(b.TiltClicks.Sd, 0, 1);
    }

    // Facts p9 of the trade: two clicks out of level found by drag explained a fold that a lap had not cured. Common practice, no source.
    [Fact]
    public void Drag_slight_at_one_end_and_loose_at_the_other_tells_of_a_tilt_of_one_to_three_clicks()
    {
        var b = SteelBook.Belief("""{"kind":"strip","um":80,"sdUm":3}""", SteelBook.All("paper-cut", "cuts").Replace("\"right\":\"cuts\"", "\"right\":\"folds\"", StringComparison.Ordinal),
            SteelBook.Ends("paper-drag", "slight", "loose"));
        // Left less right: the loose right end stands wider. Measured between the adjusters, in clicks.
        var tilt = b.TiltClicks;
        Assert.True(tilt.Below(-1) - tilt.Below(-3) > 0.5, $"{tilt}");
    }

    // Fact p5 of the trade: cuts left and centre, folds at the right after some mowing: the trailing end opens more. Common practice, no source.
    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    public void Seasons_that_start_folding_at_the_right_teach_that_the_right_opens_more(int seasons)
    {
        var bodies = new List<string> { """{"kind":"strip","um":80,"sdUm":3}""" };
        for (var i = 0; i < seasons; i++)
        {
            bodies.AddRange([SteelBook.Ends("contact", "light", "light"), SteelBook.All("paper-cut", "cuts")]);
            bodies.AddRange(Enumerable.Repeat(SteelBook.Mow(1), 6));
            bodies.Add(SteelBook.Three("paper-cut", "cuts", "cuts", "folds"));
            bodies.Add("""{"kind":"square-up"}""");
            bodies.Add(SteelBook.Clicks(4, 4));
        }
        var b = SteelBook.Belief([.. bodies]);
        Assert.True(b.OpeningUmPerHour(1).Mean > b.OpeningUmPerHour(0).Mean + 1, $"{b.OpeningUmPerHour(0)} and {b.OpeningUmPerHour(1)}");
        if (seasons == 3)
        {
            var less = SteelBook.Belief([.. bodies.Take(1 + ((bodies.Count - 1) / 3))]);
            Assert.True(b.OpeningUmPerHour(1).Sd < less.OpeningUmPerHour(1).Sd);
        }
    }

    [Fact]
    public void Clicks_counted_between_two_known_gaps_teach_the_click()
    {
        // Six clicks in from 200 to 80 µm by feeler: 20 µm a click, and surer than before.
        var b = SteelBook.Belief("""{"kind":"feeler","left":{"goUm":195,"noGoUm":205},"right":{"goUm":195,"noGoUm":205}}""", SteelBook.Clicks(1, 1),
            """{"kind":"feeler","left":{"goUm":185,"noGoUm":195},"right":{"goUm":185,"noGoUm":195}}""", SteelBook.Clicks(6, 6),
            """{"kind":"feeler","left":{"goUm":35,"noGoUm":45},"right":{"goUm":35,"noGoUm":45}}""");
        Assert.InRange(b.ClickUm(0).Mean, 22, 26);                  // 150 µm in six
        Assert.True(b.ClickUm(0).Sd < 2);
    }

    [Fact]
    public void A_mowing_and_a_click_in_teach_opposite_things_of_the_same_reading()
    {
        // Wider than expected after mowing: the side opens more. Closer than expected: it opens less.
        string[] start = [SteelBook.Known(20), SteelBook.Mow(6)];
        var usual = SteelBook.Belief(start).OpeningUmPerHour(0).Mean;
        Assert.True(SteelBook.Belief([.. start, SteelBook.All("paper-drag", "loose")]).OpeningUmPerHour(0).Mean > usual);
        Assert.True(SteelBook.Belief([.. start, SteelBook.All("contact", "heavy")]).OpeningUmPerHour(0).Mean < usual);
    }

    [Fact]
    public void Exact_readings_never_leave_the_answer_less_certain()
    {
        // A feeler reading between two leaves is almost a measured number; a repeat of it can only sharpen the clearance there. (With one-sided
        // categories the matched spread may grow after an odd reading, so the law is stated only here.)
        Gen.Select(Gen.Int[0, 2], Gen.Int[3, 15], Gen.Int[2, 8]).Sample((station, tens, times) =>
        {
            var reading = $$"""{"kind":"feeler","{{Stations.All[station]}}":{"goUm":{{tens * 10}},"noGoUm":{{(tens * 10) + 10}}} }""";
            var last = double.PositiveInfinity;
            for (var n = 0; n <= times; n++)
            {
                var sd = SteelBook.Belief(["""{"kind":"locked"}""", .. Enumerable.Repeat(reading, n)]).ClearanceUm(station).Sd;
                Assert.True(sd <= last + 1e-9, $"{sd} after {last}");
                last = sd;
            }
            Assert.True(last < 10);
        }, iter: 20, threads: 1);
    }

    [Fact]
    public void A_check_tells_more_read_twice_than_once_where_it_says_what_was_expected()
    {
        foreach (var (kind, word) in ((string, string)[])[("contact", "light"), ("paper-cut", "nicks"), ("paper-drag", "slight")])
        {
            double Sd(int n) => SteelBook.Belief([SteelBook.Known(kind == "paper-drag" ? 80 : 20), .. Enumerable.Repeat(SteelBook.All(kind, word), n)]).ClearanceUm(1).Sd;
            Assert.True(Sd(1) <= Sd(0) && Sd(2) <= Sd(1), kind);
        }
    }

    [Theory]
    [InlineData("paper-cut", "cuts", "folds")]
    [InlineData("paper-drag", "tight", "loose")]
    [InlineData("contact", "heavy", "none")]
    [InlineData("swath", "clean", "uncut")]
    public void Every_check_of_the_gap_moves_the_clearance_the_way_its_words_say(string kind, string close, string wide)
    {
        for (var s = 0; s < 3; s++)
        {
            string At(string word) => $$"""{"kind":"{{kind}}","{{Stations.All[s]}}":"{{word}}"}""";
            var plain = Mean(SteelBook.Belief("""{"kind":"locked"}"""), s);
            Assert.True(Mean(SteelBook.Belief(At(close)), s) < plain);
            Assert.True(Mean(SteelBook.Belief(At(wide)), s) > plain);
        }
    }

    [Fact]
    public void A_torch_tells_of_bluntness_alone()
    {
        var plain = SteelBook.Belief("""{"kind":"locked"}""");
        var wide = SteelBook.Belief(SteelBook.All("torch", "wide"));
        var none = SteelBook.Belief(SteelBook.All("torch", "none"));
        for (var s = 0; s < 3; s++)
        {
            Assert.True(none.EdgeUm(s).Mean < plain.EdgeUm(s).Mean && plain.EdgeUm(s).Mean < wide.EdgeUm(s).Mean);
            Assert.Equal(Mean(plain, s), Mean(wide, s), 1e-6);
        }
    }

    [Fact]
    public void Contact_and_paper_together_tell_the_gap_from_the_bluntness()
    {
        // The paper folds though the pair touches: the edge is blunt, not the gap wide.
        var b = SteelBook.Belief("""{"kind":"strip","um":80,"sdUm":3}""", SteelBook.All("contact", "light"), SteelBook.All("paper-cut", "folds"));
        var paperAlone = SteelBook.Belief("""{"kind":"strip","um":80,"sdUm":3}""", SteelBook.All("paper-cut", "folds"));
        Assert.True(b.EdgeUm(1).Mean > paperAlone.EdgeUm(1).Mean + 5);
        Assert.True(Mean(b, 1) < Mean(paperAlone, 1) - 30);
    }

    [Fact]
    public void A_warm_machine_or_an_unnamed_blade_tells_less()
    {
        double Sd(string more) => SteelBook.Belief("""{"kind":"strip","um":80,"sdUm":1}""", $$"""{"kind":"paper-drag","left":"slight","right":"slight"{{more}}}""").ClearanceUm(0).Sd;
        Assert.True(Sd(",\"blade\":\"1\"") < Sd(""));
        Assert.True(Sd("") < Sd(",\"state\":\"just-run\""));
    }

    [Fact]
    public void Grits_without_a_record_share_one_value_and_a_record_of_one_teaches_the_other_less()
    {
        string Lap(int grit) => $$"""{"kind":"lap","minutes":2,"grit":{{grit}}}""";
        Estimate Rate(int shownFor, bool opened)
        {
            var bodies = new List<string> { SteelBook.Known(0) };
            for (var i = 0; i < 4; i++) bodies.AddRange([Lap(80), SteelBook.Clicks(opened ? 1 : 0.5, opened ? 1 : 0.5), SteelBook.Ends("contact", opened ? "none" : "heavy", opened ? "none" : "heavy")]);
            bodies.Add(Lap(shownFor));
            return SteelBook.Belief([.. bodies]).LapUmPerMinute;
        }
        var coarse = Rate(80, true).Mean - Rate(80, false).Mean;
        var fine = Rate(120, true).Mean - Rate(120, false).Mean;
        Assert.True(coarse > 0.3 && fine > 0 && fine < coarse, $"{coarse} and {fine}");
    }
}
