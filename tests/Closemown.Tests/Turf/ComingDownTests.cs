using Closemown.Turf;
using CsCheck;
using Xunit;

namespace Closemown.Tests.Turf;

/// <summary>Overgrown turf comes down by thirds, back to the cut it was kept at.</summary>
public sealed class ComingDownTests
{
    private static MowingPlan Plan(double canopyMm, double keptMm, double rateMm = 0.5, int? since = null, int days = 28) =>
        MowingPlanner.Plan(PlanCase.Of(PlanCase.Traces(days, PlanCase.About(rateMm)), canopyMm, keptMm, keptMm) with { LastCutMm = keptMm, HighestMm = 40, DaysSinceComingDown = since });

    [Fact]
    public void Turf_of_34_7_mm_kept_at_4_7_comes_down_by_thirds_and_goes_on_at_4_7()
    {
        var mown = Plan(34.7, 4.7, days: 40).Days.Where(d => d.Mow).ToList();
        var way = mown.TakeWhile(d => d.Why.Reason == PlanReason.ComingDown).ToList();
        Assert.Equal(PlanCase.Monday, way[0].Date);
        Assert.InRange(way.Count, 5, 10);
        Assert.All(way, d => Assert.True(d.Share.Mean <= ThirdRule.Share + 0.01, $"{d.Date}: {d.Share.Mean}"));
        Assert.All(way.Zip(way.Skip(1)), w => Assert.True(w.Second.Date.DayNumber - w.First.Date.DayNumber >= PlanLimits.ComingDownApart));
        Assert.All(way.Zip(way.Skip(1)), w => Assert.True(w.Second.CutMm < w.First.CutMm));
        Assert.Equal(4.7, way[^1].CutMm, 6);
        var after = mown.Skip(way.Count).ToList();
        Assert.NotEmpty(after);
        Assert.All(after, d => Assert.InRange(d.CutMm, 4.6, 6.3));
    }

    [Fact]
    public void On_the_way_it_stays_above_the_green_base_that_the_overgrowth_has_lifted_and_still_comes_down()
    {
        var problem = PlanCase.Of(PlanCase.Traces(60, PlanCase.About(0.4)), 17, 4.7, 4.7) with { LastCutMm = 4.7, HighestMm = 40, DaysSinceComingDown = 5 };
        var bare = MowingPlanner.Plan(problem);
        var lifted = MowingPlanner.Plan(problem with { GreenBaseMm = new(12, 0.6) });
        Assert.True(lifted.Days[0].CutMm > bare.Days[0].CutMm);
        Assert.InRange(lifted.Days[0].CutMm, 12.5, 13.5);
        Assert.True(lifted.Days[0].ScalpProbability <= 0.11, $"{lifted.Days[0].ScalpProbability}");
        // However high the base, it must stand a tenth lower at the next mowing, or nothing would ever come down.
        var high = MowingPlanner.Plan(problem with { GreenBaseMm = new(16.8, 0.6) });
        Assert.Equal((17 * 0.9) - (2 * 0.4), high.Days[0].CutMm, 0.15);
        Assert.Equal(4.7, lifted.Days.Where(d => d.Mow).TakeWhile(d => d.Why.Reason == PlanReason.ComingDown).Last().CutMm, 6);
    }

    [Fact]
    public void On_wilting_turf_the_way_goes_on_above_the_last_cut_and_waits_below_it()
    {
        PlanDay First(double setMm) => MowingPlanner.Plan(PlanCase.Of(PlanCase.Traces(28, PlanCase.About(0.4), wilting: (_, t) => t < 5), 20, setMm) with { LastCutMm = 4.7, WishMm = 4.7, HighestMm = 40, DaysSinceComingDown = 5 }).Days[0];
        var above = First(13);
        Assert.True(above.Mow);
        Assert.True(above.CutMm >= 13, $"{above.CutMm}");
        Assert.False(First(16).Mow);
    }

    [Fact]
    public void On_the_way_it_waits_some_days_from_the_last_mowing()
    {
        var days = Plan(16, 4.7, since: 1).Days;
        Assert.Equal((PlanReason.ComingDownWaits, 1.0), (days[0].Why.Reason, days[0].Why.Value));
        Assert.Equal(1, days.ToList().FindIndex(d => d.Mow));
    }

    [Fact]
    public void No_planned_day_takes_more_than_two_thirds_nor_more_than_half_on_the_way_and_a_taller_canopy_no_deeper_share_on_the_way() =>
        Gen.Select(Gen.Double[3, 9], Gen.Double[3.05, 9], Gen.Double[1.05, 2], Gen.Double[0.1, 1.5]).Sample((kept, times, taller, rate) =>
        {
            var (low, high) = (Plan(kept * times, kept, rate, days: 21), Plan(kept * times * taller, kept, rate, days: 21));
            foreach (var d in low.Days.Concat(high.Days).Where(d => d.Mow))
            {
                Assert.True(d.Share.Mean <= PlanLimits.MostShare, $"{d.Date}: {d.Share.Mean}");
                if (d.Why.Reason != PlanReason.ComingDown) continue;
                Assert.True(d.Share.Mean <= PlanLimits.MostOnTheWay + 0.01, $"{d.Date}: {d.Share.Mean}");
            }
            Assert.True(low.Days[0].Mow && high.Days[0].Mow);
            // The same share, or less of it where growth asks for more than a third.
            Assert.True(high.Days[0].Share.Mean <= low.Days[0].Share.Mean + 0.01, $"{low.Days[0].Share.Mean} then {high.Days[0].Share.Mean}");
        }, iter: 60);

    [Fact]
    public void Turf_within_two_thirds_is_planned_as_ever()
    {
        var day = Plan(12, 4.7).Days[0];
        Assert.NotEqual(PlanReason.ComingDown, day.Why.Reason);
    }

    [Theory]
    [InlineData("4.7", null, 4.7, null)]
    [InlineData("4.7 24.3", 4.7, 4.7, 3)]
    [InlineData("4.7 24.3 17 12", 4.7, 4.7, 3)]
    [InlineData("4.7 24.3 17 12", null, 4.7, 3)]
    [InlineData("4.7 24.3 17 12 12.6", 4.7, 4.7, 3)]
    [InlineData("4.7 24.3 17 12 12.6 4.7", 4.7, 4.7, null)]
    [InlineData("4.7 7 4.7", 4.7, 4.7, null)]
    [InlineData("4.7 5.2", 4.7, 5.2, null)]
    [InlineData("4.7 10", 10.0, 10, null)]
    public void A_cut_far_above_the_kept_one_is_on_the_way_down(string cuts, double? wish, double kept, int? since)
    {
        var mm = cuts.Split(' ').Select(c => double.Parse(c, System.Globalization.CultureInfo.InvariantCulture)).ToList();
        var told = KeptCut.Of(mm.Select((c, i) => (PlanCase.Monday.AddDays(3 * i), c)), wish, PlanCase.Monday.AddDays(3 * mm.Count));
        Assert.Equal(new KeptCut(kept, since), told);
    }

    [Fact]
    public void After_three_weeks_above_it_the_old_cut_is_forgotten()
    {
        (DateOnly, double)[] mown = [(PlanCase.Monday, 4.7), (PlanCase.Monday.AddDays(30), 20)];
        Assert.Equal(new KeptCut(4.7, 5), KeptCut.Of(mown, null, PlanCase.Monday.AddDays(35)));
        Assert.Equal(new KeptCut(20, null), KeptCut.Of(mown, null, PlanCase.Monday.AddDays(60)));
        Assert.Null(KeptCut.Of([], null, PlanCase.Monday));
    }

    [Fact]
    public void A_long_way_down_is_not_forgotten_while_it_goes_on()
    {
        (DateOnly, double)[] mown = [(PlanCase.Monday, 4.7), .. Enumerable.Range(0, 10).Select(i => (PlanCase.Monday.AddDays(30 + (3 * i)), 24 * Math.Pow(0.86, i)))];
        Assert.Equal(new KeptCut(4.7, 2), KeptCut.Of(mown, null, PlanCase.Monday.AddDays(30 + 27 + 2)));
    }
}
