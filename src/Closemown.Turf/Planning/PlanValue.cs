using Closemown.Estimation;

namespace Closemown.Turf;

/// <summary>Expected cost from each day on, by standing height, setting and mowings since the last lowering: solved backward from the horizon.</summary>
/// <remarks>Bellman 1957, Dynamic Programming. Days are taken as independent of each other given the height; stress comes from outside and is no part of the state.</remarks>
internal sealed class PlanValue
{
    private const int Since = PlanRules.MowingsApart + 1;
    private const double CanopyStepMm = 0.2, CanopyOverMm = 8;
    private readonly PlanProblem problem;
    private readonly CutGrid cuts;
    private readonly DayOdds odds;
    private readonly double low;
    private readonly int heights;
    private readonly double[] wait;                       // by day: cost of not mowing, then of what comes after
    private readonly double[] share;                      // cost of the leaf taken: height, cut
    private readonly double[] shareOf;

    public PlanValue(PlanProblem problem, CutGrid cuts, DayOdds odds)
    {
        (this.problem, this.cuts, this.odds) = (problem, cuts, odds);
        low = Math.Max(0.5, cuts.Mm[0] - 1.5);
        heights = (int)((Math.Max(cuts.Mm[^1], problem.CanopyMm.Max()) + CanopyOverMm - low) / CanopyStepMm) + 2;
        wait = new double[problem.Days * cuts.Count * Since * heights];
        (share, shareOf) = (new double[heights * cuts.Count], new double[heights * cuts.Count]);
        for (var c = 0; c < heights; c++)
        {
            for (var j = 0; j < cuts.Count; j++)
            {
                var canopy = low + (c * CanopyStepMm);
                share[(c * cuts.Count) + j] = MowCost.Of(problem.Losses, canopy, cuts.Mm[j]);
                shareOf[(c * cuts.Count) + j] = (canopy - cuts.Mm[j]) / canopy;
            }
        }
        Solve();
    }

    /// <summary>Expected cost of not mowing on a day, from there on.</summary>
    public double Wait(int day, double canopyMm, int cut, int since) => At(wait, Base(day, cut, since), canopyMm);

    /// <summary>Expected cost of mowing on a day to a cut, from there on; infinite where a rule forbids it.</summary>
    /// <param name="day">The day.</param>
    /// <param name="canopyMm">Standing height, mm.</param>
    /// <param name="from">The setting before.</param>
    /// <param name="to">The setting to mow at.</param>
    /// <param name="since">Mowings since the last lowering.</param>
    /// <param name="barred">Whether the turf is stressed or wilts.</param>
    /// <param name="offMm">Cut made less cut set, mm.</param>
    public double Mow(int day, double canopyMm, int from, int to, int since, bool barred, double offMm = 0)
    {
        if (!Allowed(day, from, to, since)) return double.PositiveInfinity;
        var left = cuts.Mm[to] + offMm;
        if (barred && (to < from || (canopyMm - left) / canopyMm > PlanRules.TrimShare)) return double.PositiveInfinity;
        var cost = problem.Losses.Mowing + (to == from ? 0 : problem.Losses.Change) + MowCost.Of(problem.Losses, canopyMm, left) + (problem.Losses.Scalp * Scalp(day, left));
        return cost + At(wait, Base(day, to, After(from, to, since)), Math.Min(canopyMm, left));
    }

    /// <summary>Probability of a cut below the green base on a day; the base follows a setting that came down.</summary>
    public double Scalp(int day, double cutMm)
    {
        if (problem.BaseMm is not { } b) return 0;
        var follows = AreaDefaults.BaseShare * Math.Min(0, cutMm - problem.CutMm) * (1 - Math.Exp(-day / 14.0));
        return NormalMath.Phi((b.Mean + follows - cutMm) / Math.Sqrt((b.Sd * b.Sd) + (AreaDefaults.CutMm * AreaDefaults.CutMm)));
    }

    /// <summary>Mowings since the last lowering after one.</summary>
    public static int After(int from, int to, int since) => to < from ? 0 : Math.Min(PlanRules.MowingsApart, since + 1);

    private bool Allowed(int day, int from, int to, int since) =>
        to == from || (!problem.NoChange[day] && (to > from || (since >= PlanRules.MowingsApart && cuts.StepAllowed(from, to))));

    private int Base(int day, int cut, int since) => ((((day * cuts.Count) + cut) * Since) + since) * heights;

    private double At(double[] values, int from, double canopyMm)
    {
        var x = Math.Clamp((canopyMm - low) / CanopyStepMm, 0, heights - 1.000001);
        var i = (int)x;
        return values[from + i] + ((x - i) * (values[from + i + 1] - values[from + i]));
    }

    private void Solve()
    {
        int nk = cuts.Count, states = nk * Since * heights;
        var value = new double[states];
        for (var k = 0; k < nk; k++)
        {
            for (var m = 0; m < Since; m++)
            {
                for (var c = 0; c < heights; c++) value[(((k * Since) + m) * heights) + c] = End(low + (c * CanopyStepMm), k);
            }
        }
        var mown = new double[nk * Since];
        for (var d = problem.Days - 1; d >= 0; d--)
        {
            var next = d + 1 < problem.Days ? odds.GrowthMm.AsSpan((d + 1) * DayOdds.Sizes, DayOdds.Sizes) : odds.GrowthMm.AsSpan(d * DayOdds.Sizes, DayOdds.Sizes);
            var today = wait.AsSpan(d * states, states);
            for (var k = 0; k < nk; k++)
            {
                for (var m = 0; m < Since; m++)
                {
                    var from = ((k * Since) + m) * heights;
                    for (var c = 0; c < heights; c++)
                    {
                        var canopy = low + (c * CanopyStepMm);
                        var sum = 0.0;
                        foreach (var g in next) sum += At(value, from, canopy + g);
                        today[from + c] = DayCost(d, canopy, k) + (sum / DayOdds.Sizes);
                    }
                }
            }
            for (var k = 0; k < nk; k++)
            {
                for (var m = 0; m < Since; m++) mown[(k * Since) + m] = At(wait, Base(d, k, m), cuts.Mm[k]) + problem.Losses.Mowing + (problem.Losses.Scalp * Scalp(d, cuts.Mm[k]));
            }
            Choose(d, today, mown, value);
        }
    }

    /// <summary>The value of each state before the day's decision.</summary>
    private void Choose(int d, ReadOnlySpan<double> today, double[] mown, double[] value)
    {
        var free = problem.Free[d] * (1 - odds.Off[d]);
        var barred = odds.Barred[d];
        int nk = cuts.Count;
        for (var k = 0; k < nk; k++)
        {
            for (var m = 0; m < Since; m++)
            {
                var at = ((k * Since) + m) * heights;
                for (var c = 0; c < heights; c++)
                {
                    var stay = today[at + c];
                    double best = stay, bestBarred = stay;
                    for (var j = 0; free > 0 && j < nk; j++)
                    {
                        if (!Allowed(d, k, j, m)) continue;
                        var i = (c * nk) + j;
                        var after = After(k, j, m);
                        // A cut above the tips leaves the turf as it stands.
                        var leaves = shareOf[i] > 0 ? mown[(j * Since) + after] : today[(((j * Since) + after) * heights) + c] + problem.Losses.Mowing;
                        var cost = leaves + share[i] + (j == k ? 0 : problem.Losses.Change);
                        if (cost < best) best = cost;
                        if (cost < bestBarred && j >= k && shareOf[i] <= PlanRules.TrimShare) bestBarred = cost;
                    }
                    value[at + c] = (free * (((1 - barred) * best) + (barred * bestBarred))) + ((1 - free) * stay);
                }
            }
        }
    }

    /// <summary>What a day costs at a height after the day's decision.</summary>
    private double DayCost(int d, double canopy, int cut)
    {
        var (losses, wish) = (problem.Losses, problem.WishMm);
        var due = problem.By is not { } by || problem.First.AddDays(d) >= by;
        // Before the wish is due, the band is about what is kept now.
        var kept = due ? wish : Math.Max(wish, problem.CutMm);
        double under = Math.Min(wish, kept) - PlanRules.BandUnderMm, over = PlanRules.BandOverShare * kept;
        var cost = canopy < under || canopy > over ? losses.OutOfBand : 0;
        // The band's edges as known on the day: not a cliff.
        if (canopy > over) cost += losses.AbovePerMm * (canopy - over);
        if (due) cost += losses.AboveWishPerMm * Math.Max(0, cuts.Mm[cut] - wish);
        if (problem.Fixture[d]) cost += losses.FixturePerMm * Math.Max(0, canopy - wish);
        var tall = Math.Clamp((canopy - wish) / wish, -0.5, 0.5);
        return cost + (losses.Stress * odds.StressMean[d] * (1 - (losses.TallRelief * tall)));
    }

    /// <summary>What the turf still costs at the horizon: the mowing that is coming, and coming down by thirds with the days too tall meanwhile.</summary>
    private double End(double canopy, int cut)
    {
        var (losses, wish) = (problem.Losses, problem.WishMm);
        var usual = wish / (1 - PlanRules.AskShare) * 0.9;
        // What has grown above the cut is a mowing that comes so much sooner.
        var sooner = losses.Mowing * Math.Clamp((canopy - cuts.Mm[cut]) / Math.Max(0.5, usual - wish), 0, 1.5);
        var downs = Math.Max(0, Math.Log(Math.Max(canopy, cuts.Mm[cut]) / usual) / Math.Log(1 / (1 - PlanRules.AskShare)));
        var days = 3 * downs;
        var tall = Math.Max(0, canopy - (PlanRules.BandOverShare * wish));
        var steps = Math.Max(0, cuts.Mm[cut] - wish) / PlanRules.LowerMm;
        return sooner + (downs * (losses.Mowing + losses.Change)) + (days * (losses.OutOfBand + (losses.AbovePerMm * tall / 2))) + (steps * losses.Change);
    }
}
