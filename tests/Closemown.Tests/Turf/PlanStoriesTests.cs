using Closemown.Turf;
using Xunit;

namespace Closemown.Tests.Turf;

/// <summary>Days that a person knows, and what a plan says of them. Common practice, no source.</summary>
public sealed class PlanStoriesTests
{
    [Fact]
    public void Turf_stressed_by_cold_is_cut_higher_and_the_lowering_is_refused_with_its_reason()
    {
        // Kept at 5 mm, the machine set to 4 over the winter.
        var traces = PlanCase.Traces(14, PlanCase.About(0.35), stress: 2);
        var plan = MowingPlanner.Plan(PlanCase.Of(traces, 5, 4, 4) with { UsedMm = 5, Stress = new(2, 0.3), GreenBaseMm = new(2.8, 0.5) });
        Assert.All(plan.Days, d => Assert.True(d.CutMm >= 5, $"{d.Date}: {d.CutMm}"));
        Assert.All(plan.Days, d => Assert.True(!d.Mow || d is { Share.Mean: < 0.3, OverThirdProbability: < 0.05 }, $"{d.Date}: {d.Share.Mean}"));
        Assert.Equal(HeightReason.HeldStressed, plan.Days[0].WhyHeight.Reason);
        Assert.True(plan.Days[0].SetAnew, "set up from 4");
    }

    [Fact]
    public void After_a_week_away_the_cut_goes_up_rather_than_taking_half()
    {
        var day = MowingPlanner.Plan(PlanCase.Of(PlanCase.Traces(14, PlanCase.About(0.8)), 11)).Days[0];
        Assert.True(day.Mow);
        Assert.Equal(CutMove.Raised, day.Move);
        Assert.Equal(HeightReason.ComingDown, day.WhyHeight.Reason);
        Assert.True(day.Share.Mean <= ThirdRule.Share, $"{day.Share.Mean}");
    }

    [Fact]
    public void Before_days_without_anyone_it_is_mown_early()
    {
        var traces = PlanCase.Traces(14, PlanCase.About(0.8));
        var free = MowingPlanner.Plan(PlanCase.Of(traces, 6)).Days[0];
        var away = MowingPlanner.Plan(PlanCase.Of(traces, 6) with { Free = [1, 0.05, 0.05, 0.05, 0.05, 0.05, 0.9, 0.9, 0.9, 0.9, 0.9, 0.9, 0.9, 0.9] }).Days[0];
        Assert.False(free.Mow);
        Assert.True(away.Mow);
        Assert.Equal(PlanReason.OverThirdByNextFreeDay, away.Why.Reason);
    }

    [Fact]
    public void A_lower_wish_is_come_to_in_steps_and_said_by_when()
    {
        var traces = PlanCase.Traces(60, PlanCase.About(0.7));
        var plan = MowingPlanner.Plan(PlanCase.Of(traces, 6.5, 6) with { WishBy = PlanCase.Monday.AddDays(50) });
        Assert.True(plan.Wish.CanMeetDate);
        Assert.True(plan.Wish.Earliest <= PlanCase.Monday.AddDays(50));
        Assert.Equal([5.5, 5.0], plan.Days.Where(d => d.Mow && d.Move == CutMove.Lowered).Select(d => d.CutMm));
        Assert.Contains(plan.Notes, n => n.Kind == PlanNoteKind.RollFirst);
    }

    [Fact]
    public void A_wish_that_cannot_be_met_says_the_first_day_that_can()
    {
        var traces = PlanCase.Traces(60, PlanCase.About(0.7));
        var by = PlanCase.Monday.AddDays(5);
        var wish = MowingPlanner.Plan(PlanCase.Of(traces, 7.5, 6.5) with { WishBy = by }).Wish;
        Assert.False(wish.CanMeetDate);
        Assert.Equal(0, wish.ByDateProbability!.Value, 1e-9);
        Assert.NotNull(wish.Earliest);
        Assert.True(wish.Earliest > by);
    }

    [Fact]
    public void A_lower_height_is_taken_on_the_last_day_on_which_it_takes_a_third_at_most()
    {
        // Three days a week in fast growth: 6.2 mm may go to 5 today, some 8 mm on Wednesday no more.
        var p = PlanCase.Of(PlanCase.Traces(30, PlanCase.About(0.9)), 6.2, 5.5) with { Free = [1, 0, 1, 0, 1, 0, 0], MowingsSinceLowering = 5 };
        var day = MowingPlanner.Plan(p).Days[0];
        Assert.True(day.Mow);
        Assert.Equal((5.0, CutMove.Lowered), (day.CutMm, day.Move));
        Assert.True(day.Share.Mean <= ThirdRule.Share);
        // The same turf that may not be lowered yet is left: waiting costs it nothing that mowing now would save.
        Assert.NotEqual(CutMove.Lowered, MowingPlanner.Plan(p with { MowingsSinceLowering = 1 }).Days[0].Move);
    }

    [Fact]
    public void Days_away_that_nobody_tells_of_put_a_promised_height_off_but_never_the_plan_of_days_that_are_certain()
    {
        var p = PlanCase.Of(PlanCase.Traces(90, PlanCase.About(0.7), 200), 7.5, 7) with { Free = [0.85, 0.07, 0.85, 0.07, 0.85, 0.07, 0.07] };
        var (never, sometimes) = (MowingPlanner.Plan(p).Wish, MowingPlanner.Plan(p with { AwayBegins = 1 / 30.0 }).Wish);
        Assert.True(sometimes.Earliest is null || sometimes.Earliest > never.Earliest, $"{never.Earliest} and {sometimes.Earliest}");
        var certain = p with { Free = [1, 1, 1, 1, 1, 1, 1] };
        Assert.Equal(MowingPlanner.Plan(certain).Wish, MowingPlanner.Plan(certain with { AwayBegins = 1 / 30.0 }).Wish);
        Assert.Throws<ArgumentOutOfRangeException>(() => MowingPlanner.Plan(p with { AwayBegins = 2 }));
    }

    [Fact]
    public void Matches_bring_their_dates()
    {
        var match = PlanCase.Monday.AddDays(12);
        var notes = MowingPlanner.Plan(PlanCase.Of(PlanCase.Traces(14, PlanCase.About(0.7))) with { Fixtures = [match] }).Notes;
        Assert.Contains(new(PlanNoteKind.SandBy, match.AddDays(-10), match), notes);
        Assert.Contains(new(PlanNoteKind.HeightHeldFrom, match.AddDays(-3), match), notes);
        Assert.Contains(new(PlanNoteKind.LapBy, match.AddDays(-2), match), notes);
    }

    [Fact]
    public void A_number_out_of_range_is_named()
    {
        var p = PlanCase.Of(PlanCase.Traces(5, PlanCase.About(0.7)));
        Assert.Equal("days", Assert.Throws<ArgumentOutOfRangeException>(() => MowingPlanner.Plan(p with { Days = 367 })).ParamName);
        Assert.Equal("wish, mm", Assert.Throws<ArgumentOutOfRangeException>(() => MowingPlanner.Plan(p with { WishMm = 90 })).ParamName);
    }
}
