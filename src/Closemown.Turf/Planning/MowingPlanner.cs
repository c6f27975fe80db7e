namespace Closemown.Turf;

/// <summary>Days to mow and heights to set with the least expected cost: a finite-horizon decision problem over standing height and setting.</summary>
/// <remarks>
/// Solved backward on a grid (<see cref="PlanValue"/>), then rolled forward: today's decision over all traces, as the height is not known for sure; later ones on the
/// path expected, with each trace followed along for the spread. docs/plan.md tells why.
/// </remarks>
public static class MowingPlanner
{
    private const double LittleShare = 0.12, SureEnough = 0.8, PlannedFrom = 0.5, DoneMm = 0.06;

    /// <summary>Makes a plan.</summary>
    /// <exception cref="ArgumentException">A length or a number of the problem does not fit.</exception>
    public static MowingPlan Plan(PlanProblem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        problem.Checked();
        var cuts = new CutGrid(problem);
        var odds = new DayOdds(problem);
        var value = new PlanValue(problem, cuts, odds);
        var canopy = (double[])problem.CanopyMm.Clone();
        var settings = new int[problem.Traces];
        var reached = new int[problem.Traces];
        Array.Fill(settings, cuts.Now);
        Array.Fill(reached, int.MaxValue);
        double path = canopy.Average(), off = problem.CutOffMm.Average(), loss = double.NaN;
        int k = cuts.Now, m = Math.Min(PlanRules.MowingsApart, problem.MowingsSinceLowering);
        var days = new List<PlanDay>(problem.Days);
        for (var d = 0; d < problem.Days; d++)
        {
            if (d > 0)
            {
                for (var s = 0; s < problem.Traces; s++) canopy[s] += problem.Growth(s, d);
                path += odds.MeanGrowthMm[d];
            }
            var barred = odds.Barred[d] >= PlanRules.StressedProbability;
            var choice = Choice(value, cuts, d, d == 0 ? canopy : [path], d == 0 ? problem.CutOffMm : [off], k, m, barred);
            if (d == 0) loss = Math.Min(choice.Mow, choice.Wait);
            var can = problem.Free[d] >= PlannedFrom && odds.Off[d] < PlanRules.OffProbability;
            var mow = can && choice.Mow < choice.Wait;
            var to = double.IsPositiveInfinity(choice.Mow) ? k : choice.To;
            days.Add(Told(problem, cuts, odds, value, d, canopy, k, to, mow, can, barred, choice, Wanted(value, cuts, d, path, off, k, m, barred)));
            if (!mow) continue;
            for (var s = 0; s < problem.Traces; s++)
            {
                if (problem.Off[(s * problem.Days) + d]) continue;
                // A trace that missed a lowering makes it up in steps that the rules allow.
                var cut = Math.Max(cuts.Mm[to], cuts.Mm[settings[s]] - PlanRules.LowerMm);
                settings[s] = Near(cuts, cut);
                canopy[s] = Math.Min(canopy[s], cut + problem.CutOffMm[s]);
                if (cut <= problem.WishMm + DoneMm && reached[s] == int.MaxValue) reached[s] = d;
            }
            path = Math.Min(path, cuts.Mm[to] + off);
            m = PlanValue.After(k, to, m);
            k = to;
        }
        return new(days, Reached(problem, reached), problem.By is { } by ? reached.Count(r => r != int.MaxValue && problem.First.AddDays(r) <= by) / (double)problem.Traces : null, loss);
    }

    private static DateOnly? Reached(PlanProblem problem, int[] reached)
    {
        var sorted = reached.Order().ToArray();
        var at = sorted[(int)Math.Ceiling(SureEnough * sorted.Length) - 1];
        return at == int.MaxValue ? null : problem.First.AddDays(at);
    }

    private static int Near(CutGrid cuts, double mm) => Enumerable.Range(0, cuts.Count).MinBy(i => Math.Abs(cuts.Mm[i] - mm));

    /// <summary>The cheapest cut to mow at and what it and waiting cost, over heights that may be.</summary>
    private static (double Wait, double Mow, int To) Choice(PlanValue value, CutGrid cuts, int d, double[] canopy, double[] off, int k, int m, bool barred)
    {
        double wait = 0, best = double.PositiveInfinity;
        foreach (var c in canopy) wait += value.Wait(d, c, k, m);
        var to = k;
        for (var j = 0; j < cuts.Count; j++)
        {
            var sum = 0.0;
            var mean = canopy.Average();
            // A rule holds for the height expected, not for each one that may be.
            if (double.IsPositiveInfinity(value.Mow(d, mean, k, j, m, barred, off.Average()))) continue;
            for (var s = 0; s < canopy.Length; s++) sum += value.Mow(d, canopy[s], k, j, m, false, off[s]);
            if (sum / canopy.Length < best) (best, to) = (sum / canopy.Length, j);
        }
        return (wait / canopy.Length, best, to);
    }

    /// <summary>Whether lowering would be chosen but for stress.</summary>
    private static bool Wanted(PlanValue value, CutGrid cuts, int d, double path, double off, int k, int m, bool barred) =>
        barred && cuts.Mm[k] > cuts.Mm[cuts.Wish] + DoneMm && Choice(value, cuts, d, [path], [off], k, PlanRules.MowingsApart, false).To < k;

    private static PlanDay Told(PlanProblem problem, CutGrid cuts, DayOdds odds, PlanValue value, int d, double[] canopy, int k, int to, bool mow, bool can, bool barred, (double Wait, double Mow, int To) choice, bool refused)
    {
        Span<double> before = new double[problem.Traces], share = new double[problem.Traces];
        var over = 0;
        var cut = cuts.Mm[mow ? to : k];
        for (var s = 0; s < problem.Traces; s++)
        {
            before[s] = canopy[s];
            share[s] = Math.Clamp((canopy[s] - cut - problem.CutOffMm[s]) / Math.Max(0.5, canopy[s]), 0, 1);
            if (share[s] > PlanRules.AskShare) over++;
        }
        var (stands, takes) = (PlanNumber.Of(before), PlanNumber.Of(share));
        var reason = mow
            ? to < k ? DayReason.StepDown : to > k ? DayReason.Raise : barred ? DayReason.Trim : DayReason.Due
            : odds.Off[d] >= PlanRules.OffProbability ? DayReason.KeepOff
            : !can ? DayReason.NotFree
            : takes.Mean < LittleShare ? DayReason.LittleGrown
            : barred ? DayReason.Stressed : DayReason.Later;
        return new(problem.First.AddDays(d), mow, cut, mow ? cuts.Mm[to] - cuts.Mm[k] : 0, stands, takes, over / (double)problem.Traces, value.Scalp(d, cut), odds.Off[d], odds.Barred[d],
            choice.Mow, choice.Wait, reason, mow && takes.Mean > PlanRules.AskShare, refused);
    }
}
