using System.Numerics;

namespace Closemown.Turf;

/// <summary>Solves a plan backward: what is still to be lost from each state after each day's decision.</summary>
/// <remarks>
/// State in the morning: standing height, the height that the turf is used to, stress, and what the last mowings bind (<see cref="PlanPhase"/>). What the ground allows that morning is seen
/// before deciding; what grows that day is not. All that is kept is the value after the decision (<see cref="After"/>): every decision follows from it.
/// </remarks>
internal sealed class PlanSolver
{
    private readonly PlanProblem p;
    private readonly PlanSteps steps;
    private readonly double[] clear, wilting, kept, atLevel, above, raised;
    private readonly bool[] spared;

    public PlanSolver(PlanProblem p, PlanWorkspace space)
    {
        this.p = p;
        Grid = new(p);
        Calendar = new(p);
        var sum = 0.0;
        foreach (var g in p.Traces.GrowthMm) sum += g;
        Prices = new(p, Grid, sum / p.Traces.GrowthMm.Length, Calendar.Solved);
        steps = new(p.Traces.Count);
        space.Fit(Grid, Calendar.Solved);
        After = space.After;
        (clear, wilting, kept) = (space.Clear, space.Wilting, space.Kept);
        var cells = Grid.Canopies * Grid.Levels;
        (atLevel, above, raised, spared) = (new double[cells], new double[cells * RaisedCuts.Most], new double[cells], new bool[cells]);
    }

    public PlanGrid Grid { get; }

    public PlanCalendar Calendar { get; }

    public PlanPrices Prices { get; }

    /// <summary>By day: expected loss after the day's decision, on the grid; the canopy is that of the evening before growth.</summary>
    public double[][] After { get; }

    public void Solve()
    {
        End();
        for (var t = Calendar.Solved - 1; t >= 0; t--)
        {
            var day = PlanCalendar.TraceDay(t, p.Traces.Days);
            steps.Make(p.Traces, day, PlanCalendar.TraceDay(t + 1, p.Traces.Days));
            Carry(After[t]);
            Price(t);
            Decide(t);
        }
    }

    private void End()
    {
        for (var m = 0; m < PlanPhase.Count; m++)
        {
            for (var s = 0; s < PlanGrid.StressLevels; s++)
            {
                for (var k = 0; k < Grid.Levels; k++)
                {
                    var row = Grid.Row(k, s, m);
                    for (var i = 0; i < Grid.Canopies; i++)
                        clear[row + i] = Prices.End(Grid.CanopyMm(i), k, m) + (p.Losses.Stress * s * p.StressDays);
                }
            }
        }
        clear.AsSpan(0, Grid.Size).CopyTo(wilting);
        clear.AsSpan(0, Grid.Size).CopyTo(kept);
    }

    /// <summary>Takes the next morning's values back over the night, averaged over traces.</summary>
    private void Carry(double[] after)
    {
        after.AsSpan(0, Grid.Size).Clear();
        for (var q = 0; q < steps.Points; q++)
        {
            var values = steps.Kind[q] switch { PlanSteps.Clear => clear, PlanSteps.Wilting => wilting, _ => kept };
            var shift = steps.GrowthMm[q] / Grid.StepMm;
            var whole = (int)shift;
            var part = shift - whole;
            for (var s = 0; s < PlanGrid.StressLevels; s++)
            {
                var to = Math.Clamp(s + ((steps.StressInput[q] - s) / p.StressDays), 0, PlanGrid.StressLevels - 1);
                var low = Math.Min((int)to, PlanGrid.StressLevels - 2);
                var up = to - low;
                for (var m = 0; m < PlanPhase.Count; m++)
                {
                    for (var k = 0; k < Grid.Levels; k++)
                    {
                        AddShifted(after.AsSpan(Grid.Row(k, s, m), Grid.Canopies), values.AsSpan(Grid.Row(k, low, m), Grid.Canopies),
                            values.AsSpan(Grid.Row(k, low + 1, m), Grid.Canopies), steps.Weight[q], up, whole, part);
                    }
                }
            }
        }
    }

    /// <summary>Adds weight · value at (stress between two levels, canopy shifted up).</summary>
    private static void AddShifted(Span<double> into, ReadOnlySpan<double> low, ReadOnlySpan<double> high, double weight, double up, int whole, double part)
    {
        var n = into.Length;
        var inside = Math.Max(0, n - 1 - whole);
        var (a, b) = (weight * (1 - up) * (1 - part), weight * (1 - up) * part);
        var (c, d) = (weight * up * (1 - part), weight * up * part);
        var i = 0;
        for (; i + Vector<double>.Count <= inside; i += Vector<double>.Count)
        {
            var sum = new Vector<double>(into[i..]) + (a * new Vector<double>(low[(i + whole)..])) + (b * new Vector<double>(low[(i + whole + 1)..]));
            if (up > 0) sum += (c * new Vector<double>(high[(i + whole)..])) + (d * new Vector<double>(high[(i + whole + 1)..]));
            sum.CopyTo(into[i..]);
        }
        // The rest in the very order of the lanes, so that their number does not show.
        for (; i < inside; i++)
        {
            var sum = into[i] + (a * low[i + whole]) + (b * low[i + whole + 1]);
            if (up > 0) sum += (c * high[i + whole]) + (d * high[i + whole + 1]);
            into[i] = sum;
        }
        // Taller than the grid: the last slope goes on.
        var last = (weight * (1 - up) * low[n - 1]) + (weight * up * high[n - 1]);
        var slope = (weight * (1 - up) * (low[n - 1] - low[n - 2])) + (weight * up * (high[n - 1] - high[n - 2]));
        for (; i < n; i++) into[i] += last + (slope * (i + whole + part - (n - 1)));
    }

    /// <summary>What a mowing costs on a day: at each level, and at the cuts above it.</summary>
    private void Price(int t)
    {
        for (var k = 0; k < Grid.Levels; k++)
        {
            for (var i = 0; i < Grid.Canopies; i++)
            {
                var canopy = Grid.CanopyMm(i);
                atLevel[(k * Grid.Canopies) + i] = Prices.Mowing(canopy, Grid.LevelsMm[k], Grid.LevelsMm[k], t);
                if (!Calendar.CanChange[t]) continue;
                for (var j = 0; j < RaisedCuts.Most; j++)
                {
                    var cut = RaisedCuts.Mm(canopy, Grid.LevelsMm[k], j);
                    if (j == 0) spared[(k * Grid.Canopies) + i] = Prices.Spares(canopy, Grid.LevelsMm[k], t);
                    above[(((k * Grid.Canopies) + i) * RaisedCuts.Most) + j] = double.IsNaN(cut) ? double.PositiveInfinity : Prices.Mowing(canopy, cut, Grid.LevelsMm[k], t);
                }
            }
        }
    }

    /// <summary>The value of each morning by what the ground allows.</summary>
    private void Decide(int t)
    {
        var after = After[t];
        for (var s = 0; s < PlanGrid.StressLevels; s++)
        {
            if (Calendar.CanChange[t]) Raise(after, s);
            for (var m = 0; m < PlanPhase.Count; m++)
            {
                for (var k = 0; k < Grid.Levels; k++) Decide(t, after, s, m, k);
            }
        }
    }

    private void Decide(int t, double[] after, int s, int m, int k)
    {
        var (free, row, grows) = (Calendar.Free[t], Grid.Row(k, s, m), Calendar.ToNextMm(t));
        var unmown = Grid.Row(k, s, PlanPhase.Unmown(m));
        var may = m != PlanPhase.JustRaised;
        var change = may && Calendar.CanChange[t];
        var same = may && Grid.Allowed[k] && (m < PlanPhase.Raised || change);
        var lower = change && m == PlanPhase.MayLower && s < PlanLimits.StressedFrom && Calendar.MayLower(t, Grid.LevelsMm[k]);
        for (var i = 0; i < Grid.Canopies; i++)
        {
            var canopy = Grid.CanopyMm(i);
            var lowest = RaisedCuts.LowestMm(canopy);
            var not = after[unmown + i] + Prices.Standing(canopy, t) + Prices.OffWish(k, m, canopy, t) + (p.Losses.Stress * s);
            var mow = double.PositiveInfinity;
            if (same && Takes(k))
                mow = One(after, k, s, PlanPhase.AtUsed(m), i) + (m == PlanPhase.Raised ? p.Losses.HeightChange : 0);
            if (change)
            {
                mow = Math.Min(mow, raised[(k * Grid.Canopies) + i] + p.Losses.HeightChange);
                if (k < Grid.Wish && Takes(Grid.Wish))
                    mow = Math.Min(mow, One(after, Grid.Wish, s, PlanPhase.MayLower, i) + p.Losses.HeightChange);
            }
            kept[row + i] = not;
            wilting[row + i] = Mixed(not, mow);
            var (down, last) = (double.PositiveInfinity, false);
            for (var to = k - 1; lower && to >= 0 && Grid.StepDown(k, to); to--)
            {
                if (!Grid.Allowed[to] || !Takes(to) || Prices.Spares(canopy, Grid.LevelsMm[to], t)) continue;
                down = Math.Min(down, One(after, to, s, 0, i) + p.Losses.HeightChange);
                last |= LoweringDay.IsLast(canopy, Grid.LevelsMm[to], grows);
            }
            // A wished height is come to as soon as the rules allow: a mowing that may lower does.
            if (double.IsFinite(down)) mow = down;
            var back = s < PlanLimits.StressedFrom && change && double.IsFinite(mow) && RaisedCuts.ComesBack(canopy, Grid.LevelsMm[k], m, spared[(k * Grid.Canopies) + i]);
            clear[row + i] = back || last ? not + (free * (mow - not)) : Mixed(not, mow);

            bool Takes(int level) => Grid.LevelsMm[level] >= lowest && Grid.LevelsMm[level] <= (1 - PlanLimits.LeastShare) * canopy;
        }

        double Mixed(double no, double mow) => mow < no ? no + (free * (mow - no)) : no;
    }

    /// <summary>A mowing at a level that the turf is then used to.</summary>
    private double One(double[] after, int k, int s, int m, int i)
    {
        var (canopy, cut, row) = (Grid.CanopyMm(i), Grid.LevelsMm[k], Grid.Row(k, s, m));
        return Grid.In(after, row, cut) + atLevel[(k * Grid.Canopies) + i] + (p.Losses.Stress * s) + Prices.Stressed(s, canopy, cut);
    }

    /// <summary>The best cut above each level, from each standing height.</summary>
    private void Raise(double[] after, int s)
    {
        for (var k = 0; k < Grid.Levels; k++)
        {
            var row = Grid.Row(k, s, PlanPhase.JustRaised);
            for (var i = 0; i < Grid.Canopies; i++)
            {
                var (at, least, canopy) = ((k * Grid.Canopies) + i, double.PositiveInfinity, Grid.CanopyMm(i));
                var most = s >= PlanLimits.StressedFrom || spared[at] ? RaisedCuts.Most : 1;
                for (var j = 0; j < most; j++)
                {
                    var price = above[(at * RaisedCuts.Most) + j];
                    if (double.IsPositiveInfinity(price)) continue;
                    var cut = RaisedCuts.Mm(canopy, Grid.LevelsMm[k], j);
                    least = Math.Min(least, price + Grid.In(after, row, cut) + (p.Losses.Stress * s) + Prices.Stressed(s, canopy, cut));
                }
                raised[at] = least;
            }
        }
    }
}
