using Closemown.Turf;
using CsCheck;
using Xunit;

namespace Closemown.Tests.Turf;

/// <summary>What a plan may never do, whatever the weather, the turf and the prices.</summary>
public sealed class PlanLawTests
{
    /// <summary>As exactly as a hand sets a height.</summary>
    private const double HandMm = 0.05;

    private const double Roundoff = 1e-9;

    private static readonly Gen<PlanProblem> Problems =
        from rate in Gen.Double[0, 2.5]
        from canopy in Gen.Double[4, 16]
        from cut in Gen.Double[4, 9]
        from wish in Gen.Double[3, 8]
        from offSeed in Gen.Int[0, 1000]
        from offShare in Gen.Double[0, 0.5]
        from stress in Gen.Double[0, 3]
        from since in Gen.Int[0, 5]
        from fixture in Gen.Int[0, 25]
        from days in Gen.Int[1, 24]
        let traces = PlanCase.Traces(days, PlanCase.About(rate), 12,
            (n, t) => ((n * 31) + (t * 17) + offSeed) % 100 < 100 * offShare, (n, t) => ((n * 13) + (t * 29) + offSeed) % 100 < 15, stress / 2)
        select PlanCase.Of(traces, canopy, cut, wish) with
        {
            Stress = new(stress, 0.2),
            MowingsSinceLowering = since,
            Fixtures = [PlanCase.Monday.AddDays(fixture)],
            GreenBaseMm = new(0.55 * cut, 0.5),
            Free = [0.85, 0.07, 0.85, 0.85, 0.07, 0.85, 0.07],
        };

    [Fact]
    public void It_goes_below_what_the_turf_is_used_to_by_half_a_millimetre_at_most_each_third_mowing_at_the_earliest() => Problems.Sample(p =>
    {
        var (used, since) = (p.CutMm.Mean, p.MowingsSinceLowering!.Value);
        foreach (var d in MowingPlanner.Plan(p).Days.Where(d => d.Mow))
        {
            if (d.CutMm < used - Roundoff)
            {
                Assert.True(used - d.CutMm <= PlanLimits.LowerMm + HandMm + Roundoff, $"{used} to {d.CutMm}");
                Assert.True(since + 1 >= PlanLimits.LowerApart, $"{since} mowings since the last lowering");
                Assert.Equal(CutMove.Lowered, d.Move);
                Assert.True(d.Stress < PlanLimits.StressedFrom, "never under stress");
                Assert.True(d.WiltingProbability < 0.2, "never on wilting turf");
                (used, since) = (d.CutMm, 0);
            }
            else
            {
                since++;
                if (d.WhyHeight.Reason == HeightReason.RaisedTowardsWish) used = d.CutMm;
            }
        }
    }, iter: 40);

    [Fact]
    public void Nothing_is_lowered_where_the_coming_two_weeks_hardly_grow() => Gen.Select(Gen.Double[0, 0.12], Gen.Double[4.5, 7], Gen.Double[3, 4]).Sample((rate, used, wish) =>
    {
        var plan = MowingPlanner.Plan(PlanCase.Of(PlanCase.Traces(40, PlanCase.About(rate)), used * 1.2, used, wish));
        Assert.All(plan.Days, d => Assert.NotEqual(CutMove.Lowered, d.Move));
        Assert.True(plan.Wish.Earliest is null || plan.Wish.Extrapolated);
    }, iter: 30);

    [Fact]
    public void No_height_is_changed_in_the_days_before_a_match() => Problems.Sample(p =>
    {
        foreach (var d in MowingPlanner.Plan(p).Days)
        {
            var to = p.Fixtures[0].DayNumber - d.Date.DayNumber;
            if (d.Mow && to >= 0 && to <= p.NoHeightChangeDays) Assert.False(d.SetAnew, $"{to} days before the match");
        }
    }, iter: 40);

    [Fact]
    public void Probabilities_lie_within_0_and_1_and_quantiles_in_order() => Problems.Sample(p =>
    {
        foreach (var d in MowingPlanner.Plan(p).Days)
        {
            foreach (var q in (double[])[d.MowProbability, d.OverThirdProbability, d.ScalpProbability, d.KeepOffProbability, d.FreeProbability, d.WiltingProbability, d.Share.Mean, d.Share.P05, d.Share.P95])
                Assert.InRange(q, 0, 1);
            Assert.True(d.CanopyMm.P05 <= d.CanopyMm.P50 && d.CanopyMm.P50 <= d.CanopyMm.P95);
            Assert.True(d.MowProbability <= 1 - d.KeepOffProbability + 1e-9, "a trace that keeps everyone off is not mown");
        }
    }, iter: 40);

    [Fact]
    public void A_day_that_keeps_everyone_off_is_not_mown_in_any_trace()
    {
        var traces = PlanCase.Traces(21, PlanCase.About(1.2), keepOff: (_, t) => t % 3 != 2);
        var days = MowingPlanner.Plan(PlanCase.Of(traces, 9)).Days;
        for (var t = 0; t < days.Count; t++)
        {
            if (t % 3 == 2) continue;
            Assert.False(days[t].Mow);
            Assert.Equal(0, days[t].MowProbability);
            Assert.Equal(PlanReason.KeepOff, days[t].Why.Reason);
        }
        Assert.Contains(days, d => d.Mow);
    }

    [Fact]
    public void Taller_turf_never_makes_mowing_less_attractive() => Gen.Select(Gen.Double[0.2, 1.2], Gen.Double[5, 6.3], Gen.Double[0.1, 0.5]).Sample((rate, canopy, more) =>
    {
        var traces = PlanCase.Traces(14, PlanCase.About(rate));
        double Gain(double mm)
        {
            var day = MowingPlanner.Plan(PlanCase.Of(traces, mm) with { CanopyMm = new(mm, 0) }).Days[0];
            return day.LossNotMown - day.LossMown;
        }
        // To what lines between points of the grid leave.
        Assert.True(Gain(canopy + more) >= Gain(canopy) - 0.02, $"{Gain(canopy)} then {Gain(canopy + more)}");
    }, iter: 40);

    [Fact]
    public void What_does_not_grow_is_not_mown()
    {
        var plan = MowingPlanner.Plan(PlanCase.Of(PlanCase.Traces(30, (_, _) => 0), 5.1));
        Assert.All(plan.Days, d => Assert.False(d.Mow));
        Assert.All(plan.Days, d => Assert.Equal(PlanReason.LittleGrown, d.Why.Reason));
    }

    [Fact]
    public void The_same_problem_gives_the_same_plan_in_used_arrays_too()
    {
        var p = PlanCase.Of(PlanCase.Traces(20, PlanCase.About(0.8)), 6.5, 6);
        var space = new PlanWorkspace();
        MowingPlanner.Plan(PlanCase.Of(PlanCase.Traces(40, PlanCase.About(2)), 20, 9, 4), space);
        var (fresh, again) = (MowingPlanner.Plan(p), MowingPlanner.Plan(p, space));
        Assert.Equal(fresh.Days, again.Days);
        Assert.Equal(fresh.Wish, again.Wish);
        Assert.Equal(fresh.ExpectedLoss, again.ExpectedLoss);
    }
}
