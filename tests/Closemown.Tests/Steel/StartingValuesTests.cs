using Closemown.Entries;
using Closemown.Steel;
using Xunit;

namespace Closemown.Tests.Steel;

/// <summary>The table of starting values, row by row, so that a change is deliberate. All rows: common practice or assumption, no source.</summary>
public sealed class StartingValuesTests
{
    private static void Is(double mean, double sd, Prior p) => Assert.Equal((mean, sd), (p.Mean, p.Sd));

    [Fact]
    public void The_clearance_of_an_unknown_end_is_60_give_or_take_80() => Is(60, 80, SteelDefaults.ClearanceUm);

    [Fact]
    public void After_a_rebuild_the_clearance_is_40_give_or_take_40() => Is(40, 40, SteelDefaults.ClearanceAfterRebuildUm);

    [Fact]
    public void An_edge_of_unknown_history_is_15_blunt_give_or_take_10() => Is(15, 10, SteelDefaults.EdgeUm);

    [Fact]
    public void Just_lapped_it_is_3_give_or_take_one_and_a_half() => Is(3, 1.5, SteelDefaults.EdgeLappedUm);

    [Fact]
    public void Just_ground_it_is_2_give_or_take_1() => Is(2, 1, SteelDefaults.EdgeGroundUm);

    [Fact]
    public void An_edge_dulls_by_1_2_an_hour_give_or_take_0_6() => Is(1.2, 0.6, SteelDefaults.DullingUmPerHour);

    [Fact]
    public void A_click_nobody_told_is_19_give_or_take_3() => Is(19, 3, SteelDefaults.ClickUm);

    [Fact]
    public void A_told_click_may_be_5_in_100_off() => Assert.Equal(0.05, SteelDefaults.ToldClickShare);

    [Fact]
    public void A_reversal_loses_5_give_or_take_3() => Is(5, 3, SteelDefaults.LostMotionUm);

    [Fact]
    public void Each_side_opens_0_4_an_outing_give_or_take_0_4() => Is(0.4, 0.4, SteelDefaults.OpeningUmPerOuting);

    [Fact]
    public void And_3_5_an_hour_give_or_take_2_5() => Is(3.5, 2.5, SteelDefaults.OpeningUmPerHour);

    [Fact]
    public void A_minute_of_lapping_opens_5_give_or_take_2() => Is(5, 2, SteelDefaults.LapUmPerMinute);

    [Fact]
    public void A_lap_halves_bluntness_in_one_to_two_minutes_with_relief_and_in_five_without()
    {
        Assert.InRange(LapBite.HalfLifeMinutes(true), 1, 2);
        Assert.Equal(5, LapBite.HalfLifeMinutes(false));
        Assert.InRange(LapBite.HalfLifeMinutes(null), LapBite.HalfLifeMinutes(true), LapBite.HalfLifeMinutes(false));
    }

    [Fact]
    public void The_bow_is_0_give_or_take_6_own_15_unknown_40_with_a_new_knife()
    {
        Is(0, 6, SteelDefaults.BowGroundUm);
        Is(0, 15, SteelDefaults.BowUm);
        Is(0, 40, SteelDefaults.BowNewKnifeUm);
    }

    [Fact]
    public void A_strip_nobody_told_is_80_give_or_take_20() => Is(80, 20, SteelDefaults.StripUm);

    [Fact]
    public void Both_cut_points_of_paper_may_be_off_together_by_8_or_by_3_where_tried()
    {
        Is(0, 8, SteelDefaults.PaperOffsetUm);
        Assert.Equal(3, SteelDefaults.TriedStripShare * SteelDefaults.PaperOffsetUm.Sd, 12);
    }

    [Fact]
    public void Run_out_is_6_give_or_take_5() => Is(6, 5, SteelDefaults.TouchUm);

    [Theory]
    [InlineData("paper-cut", 6.5)]
    [InlineData("paper-drag", 6)]
    [InlineData("contact", 4.5)]
    [InlineData("torch", 5)]
    [InlineData("swath", 10)]
    public void Each_check_scatters_as_stated(string kind, double um) => Assert.Equal(um, SteelDefaults.ScatterUm[kind]);

    [Fact]
    public void A_warm_machine_scatters_10_more() => Assert.Equal(10, SteelDefaults.WarmScatterUm);

    [Fact]
    public void Half_the_leaves_tear_at_40_give_or_take_8_from_clean_to_torn_over_8()
    {
        Is(40, 8, SteelDefaults.CleanUm);
        Assert.Equal(8, SteelDefaults.TearSpreadUm);
    }

    [Fact]
    public void In_tolerance_is_minus_6_to_35_or_minus_8_to_15_or_10_to_50()
    {
        Assert.Equal((-6, 35), SteelDefaults.BandUm);
        Assert.Equal((-8, 15), SteelDefaults.LightContactBandUm);
        Assert.Equal((10, 50), SteelDefaults.ClearBandUm);
    }

    [Fact]
    public void Positions_nobody_told_are_280_for_the_adjusters_and_230_for_the_end_stations()
    {
        Assert.Equal([-280, 280], SteelDefaults.AdjusterAtMm);
        Assert.Equal([-230, 0, 230], SteelDefaults.StationAtMm);
    }

    private static Check Check(string kind) => Checks.Of(kind, 0, SteelBook.Description(), new PaperStrip(100, 3));

    [Fact]
    public void Paper_cuts_under_45_in_100_of_its_thickness_and_folds_above_70() => Assert.Equal([45, 70], Check("paper-cut").CutPoints);

    [Fact]
    public void Drag_is_slight_within_8_of_the_strip() => Assert.Equal([92, 108], Check("paper-drag").CutPoints);

    [Fact]
    public void A_touch_is_felt_under_4_and_heavy_under_minus_12() => Assert.Equal([-12, 4], Check("contact").CutPoints);

    [Fact]
    public void A_bright_line_is_thin_from_8_and_wide_from_20() => Assert.Equal([8, 20], Check("torch").CutPoints);

    [Fact]
    public void The_swath_is_ragged_5_past_the_clean_limit_and_uncut_40_past_it() => Assert.Equal([45, 80], Check("swath").CutPoints);
}
