using Closemown.Turf;
using CsCheck;
using Xunit;

namespace Closemown.Tests.Turf;

/// <summary>A third is the limit of every planned mowing; a cut raised for it comes back by thirds. Common practice, no source.</summary>
public sealed class ThirdPlannedTests
{
    private const double Roundoff = 1e-6;

    private static MowingPlan Plan(double canopyMm, double usedMm, double rateMm = 0.5, int? since = null, int days = 28) =>
        MowingPlanner.Plan(PlanCase.Of(PlanCase.Traces(days, PlanCase.About(rateMm)), canopyMm, usedMm, usedMm) with { UsedMm = usedMm, HighestMm = 40, DaysSinceRaised = since });

    [Fact]
    public void Ten_days_away_are_undone_in_three_mowings_two_days_apart()
    {
        var mown = Plan(9.5, 4.7, 0.85).Days.Where(d => d.Mow).Take(3).ToList();
        Assert.Equal(PlanCase.Monday, mown[0].Date);
        Assert.Equal(6.35, mown[0].CutMm, 0.11);
        Assert.Equal(PlanReason.ComingDown, mown[0].Why.Reason);
        Assert.Equal(2, mown[1].Date.DayNumber - mown[0].Date.DayNumber);
        Assert.Equal(5.4, mown[1].CutMm, 0.15);
        Assert.Equal(4.7, mown[2].CutMm, 0.11);
        Assert.Equal(2, mown[2].Date.DayNumber - mown[1].Date.DayNumber);
    }

    [Fact]
    public void Turf_of_30_mm_comes_down_by_thirds_to_the_height_it_is_used_to()
    {
        var mown = Plan(30, 7.5, days: 40).Days.Where(d => d.Mow).ToList();
        var way = mown.TakeWhile(d => d.Move == CutMove.Raised).ToList();
        Assert.Equal(PlanCase.Monday, way[0].Date);
        Assert.InRange(way.Count, 3, 8);
        Assert.All(way.Zip(way.Skip(1)), w => Assert.True(w.Second.Date.DayNumber - w.First.Date.DayNumber >= PlanLimits.ComingDownApart));
        Assert.All(way.Zip(way.Skip(1)), w => Assert.True(w.Second.CutMm < w.First.CutMm));
        Assert.Equal(7.5, mown[way.Count].CutMm, 6);
    }

    [Fact]
    public void No_planned_mowing_takes_more_than_a_third() =>
        Gen.Select(Gen.Double[3, 9], Gen.Double[1.05, 8], Gen.Double[0.05, 1.8], Gen.Double[3, 9]).Sample((used, times, rate, wish) =>
        {
            var plan = MowingPlanner.Plan(PlanCase.Of(PlanCase.Traces(21, PlanCase.About(rate)), used * times, used, wish) with { UsedMm = used, HighestMm = 60, Free = [1, 0.1, 0.85, 0.07, 0.85, 0.1, 0.1] });
            Assert.All(plan.Days.Where(d => d.Mow), d => Assert.True(d.Share.Mean <= ThirdRule.Share + Roundoff, $"{d.Date}: {d.Share.Mean}"));
        }, iter: 60);

    [Fact]
    public void Only_a_yes_to_that_very_day_lets_more_come_off()
    {
        var problem = PlanCase.Of(PlanCase.Traces(14, PlanCase.About(1)), 8, 5) with { UsedMm = 5, Fixtures = [PlanCase.Monday.AddDays(3)] };
        // In the days before a match no other height is set: it is asked, not planned.
        var asked = MowingPlanner.Plan(problem).Days[0];
        Assert.False(asked.Mow);
        Assert.True(asked.AskFirst);
        Assert.Equal(PlanReason.TooTall, asked.Why.Reason);
        var yes = MowingPlanner.Plan(problem with { OverThirdOn = [PlanCase.Monday] }).Days[0];
        Assert.True(yes.Mow);
        Assert.Equal(5, yes.CutMm, 6);
        Assert.True(yes.Share.Mean > ThirdRule.Share);
        Assert.False(yes.AskFirst);
    }

    [Fact]
    public void On_the_way_it_stays_above_the_green_base_that_the_overgrowth_has_lifted()
    {
        var problem = PlanCase.Of(PlanCase.Traces(60, PlanCase.About(0.4)), 17, 4.7, 4.7) with { UsedMm = 4.7, HighestMm = 40, DaysSinceRaised = 5 };
        var bare = MowingPlanner.Plan(problem).Days[0];
        var lifted = MowingPlanner.Plan(problem with { GreenBaseMm = new(12, 0.6) }).Days[0];
        Assert.True(lifted.CutMm > bare.CutMm, $"{bare.CutMm} then {lifted.CutMm}");
        Assert.True(lifted.ScalpProbability <= 0.11, $"{lifted.ScalpProbability}");
    }

    [Theory]
    [InlineData(0, 2)]
    [InlineData(1, 1)]
    [InlineData(2, 0)]
    public void After_a_raised_mowing_the_next_one_waits(int since, int firstDay)
    {
        var days = Plan(8, 4.7, 0.9, since).Days;
        Assert.Equal(firstDay, days.ToList().FindIndex(d => d.Mow));
        if (firstDay > 0) Assert.Equal((PlanReason.ComingDownWaits, (double)firstDay), (days[0].Why.Reason, days[0].Why.Value));
    }

    [Fact]
    public void On_wilting_turf_it_comes_back_but_goes_no_lower_than_it_is_used_to()
    {
        var wilting = PlanCase.Traces(28, PlanCase.About(0.5), wilting: (_, _) => true);
        var mown = MowingPlanner.Plan(PlanCase.Of(wilting, 9, 6, 4.5) with { UsedMm = 5.5, DaysSinceRaised = 4 }).Days.Where(d => d.Mow).ToList();
        Assert.NotEmpty(mown);
        Assert.All(mown, d => Assert.True(d.CutMm >= 5.5 - Roundoff, $"{d.CutMm}"));
    }
}
