namespace Closemown.Turf;

/// <summary>The traces lived through under the solved decisions: how probable a mowing is each day, when the wish is reached, what it all costs.</summary>
internal sealed class PlanLived
{
    private const double Reached = 0.05;
    private readonly PlanMoves moves;
    private readonly List<PlanMove> open = [];

    public PlanLived(PlanProblem p, PlanSolver solved, PlanChoices choices)
    {
        moves = new(p, solved);
        var (grid, calendar, days) = (solved.Grid, solved.Calendar, solved.Calendar.Solved);
        MownShare = new double[days];
        ReachedShare = new double[days];
        var traces = p.Traces;
        var each = 1.0 / traces.Count;
        for (var n = 0; n < traces.Count; n++)
        {
            var (canopy, stress) = Start(p, n);
            var state = PlanState.Start(p, grid);
            var reached = state.IsRaised || Math.Abs(grid.LevelsMm[state.Level] - p.WishMm) > Reached ? -1 : 0;
            var back = 0;
            for (var t = 0; t < days; t++)
            {
                if (calendar.Free[t] >= 1) back = 0;
                else if (t >= back && PlanChance.Uniform(n, t, PlanChance.Away) < p.AwayBegins) back = t + Away(n, t);
                var day = PlanCalendar.TraceDay(t, traces.Days);
                var loss = p.Losses.Stress * stress;
                var mown = false;
                if (t >= back && !traces.KeepOff[n, day] && PlanChance.Uniform(n, t, PlanChance.Free) < calendar.Free[t]
                    && Best(choices, t, canopy, stress, state, traces.Wilting[n, day], out var gain) is { } best && (gain > 0 || moves.AnyPrice))
                {
                    mown = true;
                    MownShare[t] += each;
                    Mowings += each;
                    loss += solved.Prices.Mowing(canopy, best.CutMm, grid.LevelsMm[best.Level], t) - solved.Prices.Standing(Math.Min(canopy, best.CutMm), t) - solved.Prices.OffWish(best.CutMm, t);
                    if (PlanMoves.Sets(best.CutMm, state.SetMm)) loss += p.Losses.HeightChange;
                    state = PlanState.After(best);
                    canopy = Math.Min(canopy, Math.Max(0.5, best.CutMm + (p.CutMm.Sd * PlanChance.Normal(n, t, PlanChance.Cut))));
                    if (reached < 0 && best.CutMm <= p.WishMm + Reached && best.Level <= grid.Wish) reached = t;
                }
                if (!mown) state = state.Unmown();
                loss += solved.Prices.Standing(canopy, t);
                if (t < p.Days) Loss += each * loss;
                canopy = p.Grown(canopy, traces.GrowthMm[n, day]);
                stress += (traces.StressInput[n, day] - stress) / p.StressDays;
            }
            if (reached >= 0) ReachedShare[reached] += each;
            MeanUsedMm += each * grid.LevelsMm[state.Level];
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

    /// <summary>Height that the turf is used to at the end, mean over traces, mm.</summary>
    public double MeanUsedMm { get; private set; }

    public static (double CanopyMm, double Stress) Start(PlanProblem p, int trace) =>
        (Math.Clamp(p.CanopyMm.Mean + (p.CanopyMm.Sd * PlanChance.Stratified(trace, p.Traces.Count, PlanChance.Canopy)), 0.5, Math.Max(p.CanopyMm.Mean, p.CeilingMm)),
            Math.Clamp(p.Stress.Mean + (p.Stress.Sd * PlanChance.Stratified(trace, p.Traces.Count, PlanChance.Stress)), 0, StressSources.Severe));

    private static int Away(int trace, int day) =>
        PersonDays.AwayLeast + (int)((PersonDays.AwayMost - PersonDays.AwayLeast + 1) * PlanChance.Uniform(trace, day, PlanChance.AwayFor));

    /// <summary>The best mowing and what it gains against none; null where nothing may be mown.</summary>
    private PlanMove? Best(PlanChoices choices, int t, double canopy, double stress, PlanState state, bool wilting, out double gain)
    {
        moves.Fill(t, canopy, state.Level, state.Phase, state.SetMm, wilting, stress, open);
        var (best, least) = ((PlanMove?)null, double.PositiveInfinity);
        foreach (var move in open)
        {
            var v = choices.Mown(t, canopy, stress, move, state.SetMm);
            if (v < least) (best, least) = (move, v);
        }
        gain = best is null ? 0 : choices.NotMown(t, canopy, stress, state.Level, state.Phase, state.Unmown().Phase) - least;
        return best;
    }
}
