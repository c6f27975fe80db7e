using System.Globalization;
using Closemown.Turf;
using Xunit;

namespace Closemown.Tests.Turf;

/// <summary>What turf is used to, as its mowings tell. Common practice, no source; the three weeks are assumed.</summary>
public sealed class UsedHeightTests
{
    private static UsedHeight Told(string cuts, double stands, int everyDays = 3, int later = 3)
    {
        var mm = cuts.Split(' ').Select(c => double.Parse(c, CultureInfo.InvariantCulture)).ToList();
        var mown = mm.Select((c, i) => (PlanCase.Monday.AddDays(everyDays * i), c));
        return UsedHeight.Of(mown, stands, PlanCase.Monday.AddDays((everyDays * (mm.Count - 1)) + later))!.Value;
    }

    [Theory]
    [InlineData("4.7", 4.7, null)]
    [InlineData("4.7 6.3", 4.7, 3)]
    [InlineData("4.7 6.3 5.4", 4.7, 3)]
    [InlineData("4.7 6.3 5.4 4.7", 4.7, null)]
    [InlineData("6 5.5 5", 5.0, null)]
    [InlineData("5 4.5", 4.5, null)]
    [InlineData("4.7 24.3 17 12 12.6", 4.7, 3)]
    [InlineData("5 5.04 4.98", 4.98, null)]
    public void It_is_the_lowest_cut_of_the_last_weeks_and_a_cut_above_it_is_raised(string cuts, double used, int? since) =>
        Assert.Equal(new UsedHeight(used, since), Told(cuts, 6));

    [Fact]
    public void Raised_for_more_than_three_weeks_the_old_height_is_forgotten() =>
        Assert.Equal(new UsedHeight(6, null), Told("5 6 6 6 6 6 6 6 6 6", 7));

    [Fact]
    public void A_long_way_down_is_not_forgotten_while_it_goes_on() =>
        Assert.Equal(new UsedHeight(4.7, 2), Told("4.7 24 20.7 17.8 15.3 13.1 11.3 9.7 8.4 7.2 6.2", 6.6, later: 2));

    [Fact]
    public void Turf_left_for_five_weeks_that_hardly_grew_is_still_used_to_its_cut() =>
        Assert.Equal(new UsedHeight(5, null), Told("5", 6.2, later: 35));

    [Fact]
    public void Turf_left_for_five_weeks_that_grew_away_comes_back_by_thirds_to_half_as_high_again()
    {
        Assert.Equal(new UsedHeight(7.5, null), Told("5", 30, later: 35));
        Assert.Equal(6, Told("5", 9, later: 35).Mm, 1e-9);
        (DateOnly, double)[] mown = [(PlanCase.Monday, 5), (PlanCase.Monday.AddDays(35), 20), (PlanCase.Monday.AddDays(37), 13.6), (PlanCase.Monday.AddDays(39), 9.4)];
        Assert.Equal(new UsedHeight(7.5, 2), UsedHeight.Of(mown, 10, PlanCase.Monday.AddDays(41)));
    }

    [Fact]
    public void Nothing_mown_tells_nothing_and_mowings_to_come_are_not_looked_at()
    {
        Assert.Null(UsedHeight.Of([], 6, PlanCase.Monday));
        Assert.Equal(new UsedHeight(5, null), UsedHeight.Of([(PlanCase.Monday, 5), (PlanCase.Monday.AddDays(9), 3)], 6, PlanCase.Monday.AddDays(2)));
    }
}
