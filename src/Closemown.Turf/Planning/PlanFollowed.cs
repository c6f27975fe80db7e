namespace Closemown.Turf;

/// <summary>The plan itself: each day's decision for all traces together, and what the turf stands at if it is followed.</summary>
/// <remarks>A decision is the one with the least expected loss over what the traces have come to by then. Where a trace keeps everyone off, it goes unmown in that trace.</remarks>
internal sealed class PlanFollowed
{
    private const double Likely = 0.5, WiltingFrom = 0.2, LittleShare = 0.15, Ask = 0.5, WishMm = 0.05;

    /// <summary>The machine stands at a height that is not kept, so at none of the grid's.</summary>
    private const int Unkept = -1;

    private readonly PlanProblem p;
    private readonly PlanSolver solved;
    private readonly PlanChoices choices;
    private readonly double[] canopy, stress, sorted, shares, mown;

    public PlanFollowed(PlanProblem p, PlanSolver solved, PlanChoices choices)
    {
        (this.p, this.solved, this.choices) = (p, solved, choices);
        (canopy, stress, sorted, shares) = (new double[p.Traces.Count], new double[p.Traces.Count], new double[p.Traces.Count], new double[p.Traces.Count]);
        mown = new double[solved.Grid.Cuts];
    }

    public List<PlanDay> Days(double[] mownShare)
    {
        var (grid, calendar, traces) = (solved.Grid, solved.Calendar, p.Traces);
        for (var n = 0; n < traces.Count; n++) (canopy[n], stress[n]) = PlanLived.Start(p, n);
        var (last, set, lowering) = (grid.Last, grid.Set, PlanLived.Lowering(p));
        var down = new ComingDown(p.DaysSinceComingDown);
        var lastMm = p.CutMm.Mean;
        List<PlanDay> days = new(p.Days);
        for (var t = 0; t < p.Days; t++)
        {
            var day = PlanCalendar.TraceDay(t, traces.Days);
            var (off, wilts) = (Share(traces.KeepOff, day), Share(traces.Wilting, day));
            var felt = stress.Average();
            var wilting = wilts >= WiltingFrom;
            var not = 0.0;
            mown.AsSpan().Fill(double.PositiveInfinity);
            // Only the mornings that let anyone on count in weighing a mowing; where none does, all.
            var open = off < 1;
            var weight = 1 / (open ? traces.Count * (1 - off) : traces.Count);
            for (var n = 0; n < traces.Count; n++)
            {
                if (!open || !traces.KeepOff[n, day]) not += weight * choices.NotMown(t, canopy[n], stress[n], last, lowering);
            }
            var free = calendar.Free[t];
            var onTheWay = down.Goes(Removed(grid.CutsMm[last]));
            var best = -1;
            for (var k = 0; k < grid.Cuts; k++)
            {
                if (onTheWay || !choices.May(t, last, set, k, wilting, felt, lowering) || Removed(grid.CutsMm[k]) > PlanLimits.MostShare) continue;
                mown[k] = Mean(t, day, open, weight, last, set, k, lowering);
                if (best < 0 || mown[k] < mown[best]) best = k;
            }
            // Nothing may be mown to on a day that allows no change while the machine is set wrong.
            var cut = best < 0 ? last : best;
            var gain = best < 0 ? double.NegativeInfinity : not - mown[best];
            var possible = best >= 0 && off < Likely && free >= Likely;
            var mow = possible && gain > 0;
            var said = Said(t, mow, cut, last, set, lowering, gain, not, off, wilts, free, mownShare[t]);
            if (onTheWay) said = Down(t, down, said, last, lastMm);
            days.Add(said);
            if (said.Mow) lastMm = said.CutMm;
            if (said.Mow && onTheWay)
            {
                var atKept = said.CutMm <= grid.CutsMm[last];
                down.Mown(atKept);
                (set, lowering) = (atKept ? last : Unkept, 0);
            }
            else if (mow)
            {
                lowering = cut < last ? 0 : Math.Min(lowering + 1, PlanGrid.LoweringCounts - 1);
                (last, set) = (cut, cut);
            }
            down.NextDay();
            for (var n = 0; n < traces.Count; n++)
            {
                if (said.Mow && !traces.KeepOff[n, day])
                    canopy[n] = Math.Min(canopy[n], Math.Max(0.5, said.CutMm + (p.CutMm.Sd * PlanChance.Normal(n, t, PlanChance.Cut))));
                canopy[n] = p.Grown(canopy[n], traces.GrowthMm[n, day]);
                stress[n] += (traces.StressInput[n, day] - stress[n]) / p.StressDays;
            }
        }
        return days;
    }

    private double Mean(int t, int day, bool open, double weight, int last, int set, int cut, int lowering)
    {
        var sum = 0.0;
        for (var n = 0; n < canopy.Length; n++)
        {
            if (!open || !p.Traces.KeepOff[n, day]) sum += weight * choices.Mown(t, canopy[n], stress[n], last, cut, lowering);
        }
        return sum + (cut == set ? 0 : p.Losses.HeightChange);
    }

    /// <summary>A day on the way down: by the rule, not by price, as what is solved knows only cuts that are kept.</summary>
    private PlanDay Down(int t, ComingDown down, PlanDay day, int last, double lastMm)
    {
        var keptMm = solved.Grid.CutsMm[last];
        var cutMm = ComingDown.CutMm(day.CanopyMm.Mean, keptMm, GrowthToNext(t), solved.Prices.GreenDownToMm(day.CanopyMm.Mean, keptMm, t));
        var share = Removal(t, cutMm, out var over, out var scalp);
        // On wilting turf nothing is cut lower than it was; a cut above the last one only trims what has grown.
        var can = solved.Calendar.CanChange[t] && (day.WiltingProbability < WiltingFrom || cutMm >= lastMm) && share.Mean <= PlanLimits.MostShare;
        var mow = can && down.Waits == 0 && day.KeepOffProbability < Likely && day.FreeProbability >= Likely;
        var loss = 0.0;
        for (var n = 0; n < canopy.Length; n++) loss += choices.Trimmed(t, canopy[n], stress[n], last, cutMm) / canopy.Length;
        var why = mow ? new(PlanReason.ComingDown, Removed(keptMm))
            : day.KeepOffProbability >= Likely ? new(PlanReason.KeepOff, day.KeepOffProbability)
            : solved.Calendar.Minutes[t] < p.MowingMinutes ? new(PlanReason.NoMinutes, solved.Calendar.Minutes[t])
            : day.FreeProbability < Likely ? new(PlanReason.NotFree, day.FreeProbability)
            : down.Waits > 0 ? new PlanWhy(PlanReason.ComingDownWaits, down.Waits) : new(PlanReason.TooTall, Removed(keptMm));
        return day with
        {
            Mow = mow,
            MowProbability = mow ? day.FreeProbability * (1 - day.KeepOffProbability) : 0,
            CutMm = cutMm,
            Move = cutMm > keptMm ? CutMove.Raised : CutMove.Same,
            SetAnew = true,
            Share = share,
            OverThirdProbability = over,
            ScalpProbability = scalp,
            AskFirst = mow && over >= Ask,
            LossMown = can ? loss + p.Losses.HeightChange : double.PositiveInfinity,
            Minutes = mow ? p.MowingMinutes + p.HeightChangeMinutes : 0,
            Why = why,
            WhyHeight = new(HeightReason.ComingDown, keptMm),
        };
    }

    /// <summary>What grows from a mowing on the way down until the next can be, mm, mean over traces.</summary>
    private double GrowthToNext(int t)
    {
        const int longest = 14;
        var calendar = solved.Calendar;
        var next = t + PlanLimits.ComingDownApart;
        while (next < calendar.Solved && next < t + longest && calendar.Free[next] < Likely) next++;
        var sum = 0.0;
        for (var d = t; d < next; d++)
        {
            var day = PlanCalendar.TraceDay(d, p.Traces.Days);
            for (var n = 0; n < canopy.Length; n++) sum += p.Traces.GrowthMm[n, day];
        }
        return sum / canopy.Length;
    }

    /// <summary>Share that a cut takes, mean over traces.</summary>
    private double Removed(double cutMm)
    {
        var sum = 0.0;
        foreach (var mm in canopy) sum += Math.Clamp((mm - cutMm) / mm, 0, 1);
        return sum / canopy.Length;
    }

    /// <summary>What a cut takes, with the probabilities of more than a third and of a scalp.</summary>
    private Spread Removal(int t, double cutMm, out double over, out double scalp)
    {
        (over, scalp) = (0, 0);
        for (var n = 0; n < canopy.Length; n++)
        {
            over += PlanPrices.OverThird(canopy[n], cutMm, p.CutMm.Sd) / canopy.Length;
            scalp += solved.Prices.Scalp(canopy[n], cutMm, t) / canopy.Length;
            shares[n] = Math.Clamp((canopy[n] - cutMm) / canopy[n], 0, 1);
        }
        (over, scalp) = (Math.Clamp(over, 0, 1), Math.Clamp(scalp, 0, 1));
        return Of(shares);
    }

    private PlanDay Said(int t, bool mow, int cut, int last, int set, int lowering, double gain, double not, double off, double wilts, double free, double mownShare)
    {
        var (grid, calendar) = (solved.Grid, solved.Calendar);
        var cutMm = grid.CutsMm[cut];
        var share = Removal(t, cutMm, out var over, out var scalp);
        var stands = Of(canopy);
        var felt = stress.Average();
        return new()
        {
            Date = p.From.AddDays(t),
            Mow = mow,
            MowProbability = Math.Clamp(mownShare, 0, 1),
            CutMm = cutMm,
            Move = cut < last ? CutMove.Lowered : cut > last ? CutMove.Raised : CutMove.Same,
            SetAnew = cut != set,
            CanopyMm = stands,
            Share = share,
            OverThirdProbability = over,
            ScalpProbability = scalp,
            AskFirst = mow && over >= Ask,
            KeepOffProbability = off,
            FreeProbability = free,
            WiltingProbability = wilts,
            Stress = felt,
            LossMown = double.IsFinite(gain) ? not - gain : double.PositiveInfinity,
            LossNotMown = not,
            Minutes = mow ? p.MowingMinutes + (cut != set ? p.HeightChangeMinutes : 0) : 0,
            Why = Why(t, mow, cut, gain, off, free, share.Mean, felt),
            WhyHeight = WhyHeight(t, cut, last, lowering, wilts, felt, stands.Mean),
        };
    }

    private PlanWhy Why(int t, bool mow, int cut, double gain, double off, double free, double share, double felt)
    {
        var calendar = solved.Calendar;
        if (mow)
        {
            var next = t + 1;
            while (next < calendar.Solved && next < t + 7 && calendar.Free[next] < Likely) next++;
            var over = 0.0;
            for (var n = 0; n < canopy.Length; n++)
            {
                var later = canopy[n];
                for (var d = t; d < next; d++) later = p.Grown(later, p.Traces.GrowthMm[n, PlanCalendar.TraceDay(d, p.Traces.Days)]);
                over += PlanPrices.OverThird(later, solved.Grid.CutsMm[cut], p.CutMm.Sd) / canopy.Length;
            }
            if (over >= 0.25) return new(PlanReason.OverThirdByNextFreeDay, over);
            var off2 = Math.Abs(solved.Grid.CutsMm[cut] - p.WishMm);
            return off2 > WishMm && share < LittleShare ? new(PlanReason.TowardsWish, off2) : new(PlanReason.WaitingCostsMore, gain);
        }
        if (off >= Likely) return new(PlanReason.KeepOff, off);
        if (calendar.Minutes[t] < p.MowingMinutes) return new(PlanReason.NoMinutes, calendar.Minutes[t]);
        if (free < Likely && gain > 0) return new(PlanReason.NotFree, free);
        if (share < LittleShare) return new(PlanReason.LittleGrown, share);
        if (free < Likely) return new(PlanReason.NotFree, free);
        return felt >= PlanLimits.StressedFrom ? new(PlanReason.Stressed, felt) : new(PlanReason.LaterCostsLess, Math.Max(0, -gain));
    }

    private HeightWhy WhyHeight(int t, int cut, int last, int lowering, double wilts, double felt, double stands)
    {
        var (grid, wish) = (solved.Grid, solved.Grid.Wish);
        var cutMm = grid.CutsMm[cut];
        if (cut < last) return new(HeightReason.LoweredTowardsWish, grid.CutsMm[last] - cutMm);
        var set = grid.CutsMm[grid.Set];
        if (cut == last && cut == wish) return new(HeightReason.AtWish, 0);
        if (cut > last)
        {
            if (cut <= wish) return new(HeightReason.RaisedTowardsWish, cutMm - grid.CutsMm[last]);
            return Raised(t, grid.CutsMm[last], cutMm, felt, stands);
        }
        if (solved.Calendar.Held(t, p)) return new(HeightReason.HeldFixture, solved.Calendar.ToFixture[t]);
        if (cut < wish) return new(HeightReason.HeldCostsMore, 0);
        if (wilts >= WiltingFrom) return new(HeightReason.HeldWilting, wilts);
        if (felt >= PlanLimits.StressedFrom) return new(HeightReason.HeldStressed, felt);
        if (lowering < PlanGrid.LoweringCounts - 1) return new(HeightReason.HeldThreeMowings, lowering);
        if (grid.CutsMm[last] - set > PlanLimits.LowerMm + 1e-9 && cut == last) return new(HeightReason.RaisedForStep, grid.CutsMm[last] - set);
        var under = Math.Max(p.WishMm, cutMm - PlanLimits.LowerMm);
        if ((stands - under) / stands > ThirdRule.Share - 0.03) return Raised(t, under, cutMm, felt, stands);
        var least = double.PositiveInfinity;
        for (var k = 0; k < cut; k++) least = Math.Min(least, mown[k]);
        return new(HeightReason.HeldCostsMore, double.IsFinite(least) ? Math.Max(0, least - mown[cut]) : 0);
    }

    /// <summary>What the higher cut saves most of.</summary>
    private HeightWhy Raised(int t, double low, double high, double felt, double stands)
    {
        var share = Math.Max(0, (stands - low) / stands);
        var forShare = PlanPrices.Over(stands, low, p.CanopySdMm, p.CutMm.Sd, p.Losses) - PlanPrices.Over(stands, high, p.CanopySdMm, p.CutMm.Sd, p.Losses);
        var forStress = p.Losses.StressedShare * felt * (high - low) / stands;
        var scalp = solved.Prices.Scalp(stands, low, t);
        var forScalp = p.Losses.ScalpGuard * p.Losses.Scalp * (scalp - solved.Prices.Scalp(stands, high, t));
        if (forScalp > forShare && forScalp > forStress) return new(HeightReason.RaisedForScalp, scalp);
        return forStress > forShare ? new(HeightReason.RaisedForStress, felt) : new(HeightReason.RaisedForShare, share);
    }

    private double Share(bool[,] of, int day)
    {
        var count = 0;
        for (var n = 0; n < p.Traces.Count; n++) count += of[n, day] ? 1 : 0;
        return count / (double)p.Traces.Count;
    }

    private Spread Of(double[] values)
    {
        values.CopyTo(sorted, 0);
        Array.Sort(sorted);
        double mean = 0, square = 0;
        foreach (var v in values) mean += v / values.Length;
        foreach (var v in values) square += (v - mean) * (v - mean) / values.Length;
        return new(mean, Math.Sqrt(square), At(0.05), At(0.5), At(0.95));
        double At(double q)
        {
            var x = q * (sorted.Length - 1);
            var i = Math.Min((int)x, Math.Max(0, sorted.Length - 2));
            return sorted.Length == 1 ? sorted[0] : sorted[i] + ((x - i) * (sorted[i + 1] - sorted[i]));
        }
    }
}
