using System.Numerics;

namespace Closemown.Turf;

/// <summary>Solves a plan backward: what is still to be lost from each state after each day's decision.</summary>
/// <remarks>
/// State in the morning: standing height, cut of the last mowing, stress, mowings since the last lowering. What the ground allows that morning is seen before deciding; what grows that
/// day is not. All that is kept is the value after the decision (<see cref="After"/>): every decision follows from it.
/// </remarks>
internal sealed class PlanSolver
{
    private readonly PlanProblem p;
    private readonly PlanSteps steps;
    private readonly double[] clear, wilting, kept, best, raised;

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
        (After, Mowing) = (space.After, space.Mowing);
        (clear, wilting, kept) = (space.Clear, space.Wilting, space.Kept);
        (best, raised) = (new double[Grid.Canopies * Grid.Cuts], new double[Grid.Canopies * Grid.Cuts]);
    }

    public PlanGrid Grid { get; }

    public PlanCalendar Calendar { get; }

    public PlanPrices Prices { get; }

    /// <summary>By day: expected loss after the day's decision, on the grid; the canopy is that of the evening before growth.</summary>
    public double[][] After { get; }

    /// <summary>By day: what a mowing costs at each cut and standing height.</summary>
    public double[][] Mowing { get; }

    public void Solve()
    {
        End();
        for (var t = Calendar.Solved - 1; t >= 0; t--)
        {
            var day = PlanCalendar.TraceDay(t, p.Traces.Days);
            steps.Make(p.Traces, day, PlanCalendar.TraceDay(t + 1, p.Traces.Days));
            Carry(After[t]);
            Prices.FillMowing(t, Mowing[t]);
            Decide(t);
        }
    }

    private void End()
    {
        for (var m = 0; m < PlanGrid.LoweringCounts; m++)
        {
            for (var s = 0; s < PlanGrid.StressLevels; s++)
            {
                for (var k = 0; k < Grid.Cuts; k++)
                {
                    var row = Grid.Row(k, s, m);
                    for (var i = 0; i < Grid.Canopies; i++) clear[row + i] = Prices.End(Grid.CanopyMm(i), k) + (p.Losses.Stress * s * p.StressDays);
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
        var block = Grid.Cuts;
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
                for (var m = 0; m < PlanGrid.LoweringCounts; m++)
                {
                    for (var k = 0; k < block; k++)
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
        var (a, b, c, d) = (weight * (1 - up) * (1 - part), weight * (1 - up) * part, weight * up * (1 - part), weight * up * part);
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
        var (last, slope) = ((weight * (1 - up) * low[n - 1]) + (weight * up * high[n - 1]), (weight * (1 - up) * (low[n - 1] - low[n - 2])) + (weight * up * (high[n - 1] - high[n - 2])));
        for (; i < n; i++) into[i] += last + (slope * (i + whole + part - (n - 1)));
    }

    /// <summary>The value of each morning by what the ground allows.</summary>
    private void Decide(int t)
    {
        var free = Calendar.Free[t];
        var (after, mowing) = (After[t], Mowing[t]);
        for (var m = 0; m < PlanGrid.LoweringCounts; m++)
        {
            var more = Math.Min(m + 1, PlanGrid.LoweringCounts - 1);
            for (var s = 0; s < PlanGrid.StressLevels; s++)
            {
                Mown(s, more, best);
                if (Calendar.CanChange[t]) Raise();
                var lower = Calendar.CanChange[t] && s < PlanLimits.StressedFrom && m == PlanGrid.LoweringCounts - 1;
                for (var k = 0; k < Grid.Cuts; k++)
                {
                    var (row, at) = (Grid.Row(k, s, m), k * Grid.Canopies);
                    for (var i = 0; i < Grid.Canopies; i++)
                    {
                        var not = after[row + i] + Prices.Standing(Grid.CanopyMm(i), t) + Prices.OffWish(k, t) + (p.Losses.Stress * s);
                        var mow = Calendar.CanChange[t] && k + 1 < Grid.Cuts ? raised[at + Grid.Canopies + i] + p.Losses.HeightChange : double.PositiveInfinity;
                        if (Grid.Allowed[k]) mow = Math.Min(mow, best[at + i]);
                        kept[row + i] = not;
                        wilting[row + i] = Mixed(not, mow);
                        clear[row + i] = wilting[row + i];
                        if (!lower) continue;
                        for (var to = k - 1; to >= 0 && Grid.StepDown(k, to); to--)
                        {
                            if (Grid.Allowed[to]) mow = Math.Min(mow, Lowered(to, s, i));
                        }
                        clear[row + i] = Mixed(not, mow);
                    }
                }
            }
        }

        double Mixed(double no, double mow) => mow < no ? no + (free * (mow - no)) : no;

        double Lowered(int to, int s, int i) => One(to, s, 0, i) + p.Losses.HeightChange;

        double One(int k, int s, int m, int i)
        {
            var (canopy, cut) = (Grid.CanopyMm(i), Grid.CutsMm[k]);
            var left = canopy <= cut ? after[Grid.Row(k, s, m) + i] : Grid.In(after, Grid.Row(k, s, m), cut);
            return left + mowing[(k * Grid.Canopies) + i] + (p.Losses.Stress * s) + (p.Losses.StressedShare * s * Math.Max(0, (canopy - cut) / canopy));
        }

        void Mown(int s, int m, double[] into)
        {
            for (var k = 0; k < Grid.Cuts; k++)
            {
                for (var i = 0; i < Grid.Canopies; i++) into[(k * Grid.Canopies) + i] = One(k, s, m, i);
            }
        }

        void Raise()
        {
            for (var k = Grid.Cuts - 1; k >= 0; k--)
            {
                for (var i = 0; i < Grid.Canopies; i++)
                {
                    var here = Grid.Allowed[k] ? best[(k * Grid.Canopies) + i] : double.PositiveInfinity;
                    raised[(k * Grid.Canopies) + i] = k + 1 < Grid.Cuts ? Math.Min(here, raised[((k + 1) * Grid.Canopies) + i]) : here;
                }
            }
        }
    }
}
