using System.Reflection;
using Closemown.Advice;
using Xunit;

namespace Closemown.Tests.Advice;

/// <summary>What things are worth, pinned to the table of starting values: choices of ours, common practice or assumption, no source.</summary>
public sealed class ChoicesTests
{
    private static readonly AdviceSettings Set = AdviceSettings.Default;

    [Fact]
    public void A_minute_costs_one() => Assert.Equal(1, Set.PriceOfMinute);

    [Fact]
    public void A_wholly_torn_mowing_costs_42_and_one_out_of_tolerance_30() => Assert.Equal((42, 30), (Set.TornMowing, Set.OutOfTolerance));

    [Fact]
    public void A_um_pressed_for_an_hour_costs_0_4_to_8_and_4_beyond() => Assert.Equal((0.4, 8, 4), (Set.PressedUmHour, Set.PressingKneeUm, Set.HardPressedUmHour));

    [Fact]
    public void A_um_of_the_knife_costs_1_1_and_of_the_reel_3_9() => Assert.Equal((1.1, 3.9), (Set.KnifeUm, Set.ReelUm));

    [Fact]
    public void The_guard_on_the_pressing_side_is_2_2() => Assert.Equal(2.2, Set.GuardUm);

    [Fact]
    public void A_check_has_to_earn_a_share_of_0_15_of_its_minutes_now() => Assert.Equal(0.15, Set.CheckShare);

    [Theory]
    [InlineData("paper-cut", 0.5)]
    [InlineData("paper-drag", 1.5)]
    [InlineData("contact", 0.3)]
    [InlineData("torch", 0.3)]
    public void A_check_takes_its_minutes_a_station(string kind, double minutes)
    {
        Assert.Equal(minutes, Set.CheckMinutes(kind, 1), 12);
        Assert.Equal(3 * minutes, Set.CheckMinutes(kind, 3), 12);
    }

    [Fact]
    public void Opening_a_sitting_takes_5_and_a_turn_0_5_and_0_3_a_click() => Assert.Equal((5, 0.5, 0.3), (Set.OpenSittingMinutes, Set.ClicksMinutes, Set.ClickMinutes));

    [Fact]
    public void A_lap_takes_8_more_than_its_minutes() => Assert.Equal(8, Set.LapSetUpMinutes);

    [Fact]
    public void A_grind_takes_120_with_an_own_grinder_else_an_hour_and_a_half_of_work_and_costs_600_in_all() => Assert.Equal((120, 90, 600), (Set.OwnGrindMinutes, Set.SentGrindMinutes, Set.SentGrindMinutes + Set.SentGrindWorth));

    // Facts of the trade p7 and the cautions: common practice, no source.
    [Fact]
    public void At_most_two_clicks_at_a_go_two_minutes_a_round_three_rounds() =>
        Assert.Equal((2, 2, 3), (AdviceSettings.MostClicks, AdviceSettings.LapRoundMinutes, AdviceSettings.LapRounds));

    [Fact]
    public void Minutes_of_a_plan_add_up()
    {
        // Two clicks a side: 0.5 + 4 · 0.3, then both ends felt: 2 · 0.3.
        Assert.Equal(0.5 + 1.2 + 0.6, new SteelAction("clicks", 2, 2).Minutes(Set), 12);
        // Four a side are two goes, felt in between.
        Assert.Equal(1 + 2.4 + 1.2, new SteelAction("clicks", 4, 4).Minutes(Set), 12);
        // One click a side, then a lap of two minutes.
        Assert.Equal(0.5 + 0.6 + 0.6 + 8 + 2, new SteelAction("lap", 1, 1, 2).Minutes(Set), 12);
        Assert.Equal(0, SteelAction.Leave.Minutes(Set));
    }

    [Fact]
    public void Every_rule_has_a_name_of_its_own_a_text_and_a_source()
    {
        var rules = typeof(Rules).GetProperties(BindingFlags.Public | BindingFlags.Static).Where(p => p.PropertyType == typeof(Rule)).Select(p => (Rule)p.GetValue(null)!).ToList();
        Assert.Equal(rules.Select(r => r.Id).Order(StringComparer.Ordinal), Rules.All.Select(r => r.Id).Order(StringComparer.Ordinal));
        Assert.Equal(rules.Count, rules.Select(r => r.Id).Distinct().Count());
        Assert.All(rules, r => Assert.True(r.Text.Length > 20 && r.Source.Length > 10, r.Id));
    }
}
