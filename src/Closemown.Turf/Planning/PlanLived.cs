namespace Closemown.Turf;

/// <summary>The traces lived through under the solved decisions: how probable a mowing is each day, when the wish is reached, what it all costs.</summary>
internal sealed class PlanLived
{
    private const double Reached = 0.05;

    public PlanLived(PlanProblem p, PlanSolver solved, PlanChoices choices)
    {
        var (grid, calendar, days) = (solved.Grid, solved.Calendar, solved.Calendar.Solved);
        MownShare = new double[days];
        ReachedShare = new double[days];
        var traces = p.Traces;
        var each = 1.0 / traces.Count;
        for (var n = 0; n < traces.Count; n++)
        {
            var (canopy, stress) = Start(p, n);
            var (last, set, lowering) = (grid.Last, grid.Set, Lowering(p));
            var reached = Math.Abs(grid.CutsMm[last] - p.WishMm) <= Reached ? 0 : -1;
            for (var t = 0; t < days; t++)
            {
                var day = PlanCalendar.TraceDay(t, traces.Days);
                var shown = t < p.Days;
                var loss = p.Losses.Stress * stress;
                if (!traces.KeepOff[n, day] && PlanChance.Uniform(n, t, PlanChance.Free) < calendar.Free[t])
                {
                    var cut = Best(p, solved, choices, t, canopy, stress, last, set, lowering, traces.Wilting[n, day], out var gain);
                    if (cut >= 0 && gain > 0)
                    {
                        MownShare[t] += each;
                        var cutMm = grid.CutsMm[cut];
                        loss += grid.In(solved.Mowing[t], cut * grid.Canopies, canopy) - solved.Prices.Standing(Math.Min(canopy, cutMm), t) - solved.Prices.OffWish(cut, t);
                        if (cut != set) loss += p.Losses.HeightChange;
                        lowering = cut < last ? 0 : Math.Min(lowering + 1, PlanGrid.LoweringCounts - 1);
                        Mowings += each;
                        (last, set) = (cut, cut);
                        canopy = Math.Min(canopy, Math.Max(0.5, cutMm + (p.CutMm.Sd * PlanChance.Normal(n, t, PlanChance.Cut))));
                        if (reached < 0 && Math.Abs(cutMm - p.WishMm) <= Reached) reached = t;
                    }
                }
                loss += solved.Prices.Standing(canopy, t);
                if (shown) Loss += each * loss;
                canopy = p.Grown(canopy, traces.GrowthMm[n, day]);
                stress += (traces.StressInput[n, day] - stress) / p.StressDays;
            }
            if (reached >= 0) ReachedShare[reached] += each;
            MeanLastMm += each * grid.CutsMm[last];
        }
        for (var t = 1; t < days; t++) ReachedShare[t] += ReachedShare[t - 1];
    }

    /// <summary>Share of traces mown on each day.</summary>
    public double[] MownShare { get; }

    /// <summary>Share of traces that have been mown to the wish by each day.</summary>
    public double[] ReachedShare { get; }

    /// <summary>Expected loss over the days shown, in mowings.</summary>
    public double Loss { get; private set; }

    /// <summary>Mowings a trace, over all solved days.</summary>
    public double Mowings { get; private set; }

    /// <summary>Cut at the end, mean over traces, mm.</summary>
    public double MeanLastMm { get; private set; }

    public static int Lowering(PlanProblem p) => Math.Clamp(p.MowingsSinceLowering ?? PlanLimits.LowerApart, 0, PlanGrid.LoweringCounts - 1);

    public static (double CanopyMm, double Stress) Start(PlanProblem p, int trace) =>
        (Math.Clamp(p.CanopyMm.Mean + (p.CanopyMm.Sd * PlanChance.Stratified(trace, p.Traces.Count, PlanChance.Canopy)), 0.5, Math.Max(p.CanopyMm.Mean, p.CeilingMm)),
            Math.Clamp(p.Stress.Mean + (p.Stress.Sd * PlanChance.Stratified(trace, p.Traces.Count, PlanChance.Stress)), 0, StressSources.Severe));

    /// <summary>The best allowed cut and what mowing gains against not mowing; −1 where nothing may be mown.</summary>
    private static int Best(PlanProblem p, PlanSolver solved, PlanChoices choices, int t, double canopy, double stress, int last, int set, int lowering, bool wilting, out double gain)
    {
        var (best, least) = (-1, double.PositiveInfinity);
        for (var k = 0; k < solved.Grid.Cuts; k++)
        {
            if (!choices.May(t, last, set, k, wilting, stress, lowering)) continue;
            var v = choices.Mown(t, canopy, stress, last, k, lowering) + (k == set ? 0 : p.Losses.HeightChange);
            if (v < least) (best, least) = (k, v);
        }
        gain = best < 0 ? 0 : choices.NotMown(t, canopy, stress, last, lowering) - least;
        return best;
    }
}
