namespace Closemown.Turf;

/// <summary>The plan itself: each day's decision for all traces together, and what the turf stands at if it is followed.</summary>
/// <remarks>A decision is the one with the least expected loss over what the traces have come to by then. Where a trace keeps everyone off, it goes unmown in that trace.</remarks>
internal sealed class PlanFollowed
{
    private const double Likely = 0.5, WiltingFrom = 0.2, LittleShare = 0.15, OffWishMm = 0.05, Same = 0.01;

    private readonly PlanProblem p;
    private readonly PlanSolver solved;
    private readonly PlanChoices choices;
    private readonly PlanMoves moves;
    private readonly List<PlanMove> open = [];
    private readonly double[] canopy, stress, sorted, shares;

    public PlanFollowed(PlanProblem p, PlanSolver solved, PlanChoices choices)
    {
        (this.p, this.solved, this.choices, moves) = (p, solved, choices, new(p, solved));
        var n = p.Traces.Count;
        (canopy, stress, sorted, shares) = (new double[n], new double[n], new double[n], new double[n]);
    }

    public List<PlanDay> Days(double[] mownShare)
    {
        var traces = p.Traces;
        for (var n = 0; n < traces.Count; n++) (canopy[n], stress[n]) = PlanLived.Start(p, n);
        var state = PlanState.Start(p, solved.Grid);
        List<PlanDay> days = new(p.Days);
        for (var t = 0; t < p.Days; t++)
        {
            var day = PlanCalendar.TraceDay(t, traces.Days);
            var morning = Look(t, day, state);
            var said = Said(morning, state, mownShare[t]);
            days.Add(said);
            state = said.Mow ? PlanState.After(morning.Best!.Value) : state.Unmown();
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

    /// <summary>What a morning is like, and what mowing and not mowing are expected to lose.</summary>
    private readonly record struct Morning(int T, double Off, double Wilts, double Felt, double Stands, PlanMove? Best, double Mown, double Not, bool Asks, bool AnyPrice)
    {
        public double Gain => Best is null ? double.NegativeInfinity : Not - Mown;
    }

    private Morning Look(int t, int day, PlanState state)
    {
        var (off, wilts, felt, stands) = (Share(p.Traces.KeepOff, day), Share(p.Traces.Wilting, day), stress.Average(), canopy.Average());
        // Only the mornings that let anyone on count in weighing a mowing; where none does, all.
        var all = off >= 1;
        double Mean(Func<int, double> of)
        {
            var (sum, count) = (0.0, 0);
            for (var n = 0; n < canopy.Length; n++)
            {
                if (!all && p.Traces.KeepOff[n, day]) continue;
                sum += of(n);
                count++;
            }
            return sum / count;
        }
        double Mown(PlanMove move) => Mean(n => choices.Mown(t, canopy[n], stress[n], move, state.SetMm));
        var then = state.Unmown().Phase;
        var not = Mean(n => choices.NotMown(t, canopy[n], stress[n], state.Level, state.Phase, then));
        moves.Fill(t, stands, state.Level, state.Phase, state.SetMm, wilts >= WiltingFrom, felt, open);
        var (best, least) = ((PlanMove?)null, double.PositiveInfinity);
        foreach (var move in open)
        {
            var loss = Mown(move);
            if (loss < least) (best, least) = (move, loss);
        }
        // Nothing is lawful but going over: only a person can say yes to that.
        var asks = open.Count == 0 && state.Waits == 0 && off < Likely && solved.Calendar.Free[t] >= Likely && state.SetMm < stands
            && Mown(new(state.SetMm, state.Level, PlanPhase.AtUsed(0))) < not;
        return new(t, off, wilts, felt, stands, best, least, not, asks, best is not null && moves.AnyPrice);
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

    private PlanDay Said(Morning m, PlanState state, double mownShare)
    {
        var free = solved.Calendar.Free[m.T];
        var mow = (m.Gain > 0 || m.AnyPrice) && m.Off < Likely && free >= Likely;
        var used = solved.Grid.LevelsMm[state.Level];
        var cutMm = m.Best?.CutMm ?? Math.Max(used, RaisedCuts.LowestMm(m.Stands));
        var share = Removal(m.T, cutMm, out var over, out var scalp);
        var anew = PlanMoves.Sets(cutMm, state.SetMm);
        return new()
        {
            Date = p.From.AddDays(m.T),
            Mow = mow,
            MowProbability = Math.Clamp(mownShare, 0, 1),
            CutMm = cutMm,
            Move = cutMm < used - Same ? CutMove.Lowered : cutMm > used + Same ? CutMove.Raised : CutMove.Same,
            SetAnew = anew,
            CanopyMm = Of(canopy),
            Share = share,
            OverThirdProbability = over,
            ScalpProbability = scalp,
            AskFirst = m.Asks,
            KeepOffProbability = m.Off,
            FreeProbability = free,
            WiltingProbability = m.Wilts,
            Stress = m.Felt,
            LossMown = m.Mown,
            LossNotMown = m.Not,
            Minutes = mow ? p.MowingMinutes + (anew ? p.HeightChangeMinutes : 0) : 0,
            Why = Why(m, mow, state, cutMm, free, share.Mean),
            WhyHeight = WhyHeight(m, state, cutMm),
        };
    }

    private PlanWhy Why(Morning m, bool mow, PlanState state, double cutMm, double free, double share)
    {
        var calendar = solved.Calendar;
        var used = solved.Grid.LevelsMm[state.Level];
        if (mow)
        {
            if (cutMm > used + Same && RaisedCuts.LowestMm(m.Stands) > used) return new(PlanReason.ComingDown, Removed(used));
            if (m.AnyPrice && m.Gain <= 0) return cutMm < used - Same ? new(PlanReason.TowardsWish, Math.Abs(cutMm - p.WishMm)) : new(PlanReason.ComingBack, used);
            var next = m.T + 1;
            while (next < calendar.Solved && next < m.T + 7 && calendar.Free[next] < Likely) next++;
            var over = 0.0;
            for (var n = 0; n < canopy.Length; n++)
            {
                var later = canopy[n];
                for (var d = m.T; d < next; d++) later = p.Grown(later, p.Traces.GrowthMm[n, PlanCalendar.TraceDay(d, p.Traces.Days)]);
                over += PlanPrices.OverThird(later, cutMm, p.CutMm.Sd) / canopy.Length;
            }
            if (over >= 0.25) return new(PlanReason.OverThirdByNextFreeDay, over);
            var off = Math.Abs(cutMm - p.WishMm);
            return off > OffWishMm && share < LittleShare ? new(PlanReason.TowardsWish, off) : new(PlanReason.WaitingCostsMore, m.Gain);
        }
        if (m.Off >= Likely) return new(PlanReason.KeepOff, m.Off);
        if (calendar.Minutes[m.T] < p.MowingMinutes) return new(PlanReason.NoMinutes, calendar.Minutes[m.T]);
        if (free < Likely && (m.Gain > 0 || m.AnyPrice)) return new(PlanReason.NotFree, free);
        if (share < LittleShare) return new(PlanReason.LittleGrown, share);
        if (free < Likely) return new(PlanReason.NotFree, free);
        if (state.Waits > 0) return new(PlanReason.ComingDownWaits, state.Waits);
        if (m.Best is null) return new(PlanReason.TooTall, Removed(state.SetMm));
        return m.Felt >= PlanLimits.StressedFrom ? new(PlanReason.Stressed, m.Felt) : new(PlanReason.LaterCostsLess, Math.Max(0, -m.Gain));
    }

    private HeightWhy WhyHeight(Morning m, PlanState state, double cutMm)
    {
        var used = solved.Grid.LevelsMm[state.Level];
        if (cutMm < used - Same) return new(HeightReason.LoweredTowardsWish, used - cutMm);
        if (cutMm > used + Same)
        {
            if (RaisedCuts.LowestMm(m.Stands) > used) return new(HeightReason.ComingDown, used);
            if (m.Best is { } to && to.Level > state.Level) return new(HeightReason.RaisedTowardsWish, cutMm - used);
            return Raised(m.T, used, cutMm, m.Felt, m.Stands);
        }
        if (Math.Abs(used - p.WishMm) <= OffWishMm) return new(HeightReason.AtWish, 0);
        if (solved.Calendar.Held(m.T, p)) return new(HeightReason.HeldFixture, solved.Calendar.ToFixture[m.T]);
        if (used < p.WishMm) return new(HeightReason.HeldCostsMore, 0);
        if (m.Wilts >= WiltingFrom) return new(HeightReason.HeldWilting, m.Wilts);
        if (m.Felt >= PlanLimits.StressedFrom) return new(HeightReason.HeldStressed, m.Felt);
        if (m.T < p.NoLoweringDays) return new(HeightReason.HeldWork, p.NoLoweringDays - m.T);
        if (!solved.Calendar.GrowsAhead(m.T, used)) return new(HeightReason.HeldNoGrowth, solved.Calendar.AheadMm(m.T));
        if (state.Bound < PlanPhase.MayLower) return new(HeightReason.HeldThreeMowings, state.Bound);
        if (used - state.SetMm > PlanLimits.LowerMm + 1e-9) return new(HeightReason.RaisedForStep, used - state.SetMm);
        var under = Math.Max(p.WishMm, used - PlanLimits.LowerMm);
        if (RaisedCuts.LowestMm(m.Stands) > under) return Raised(m.T, under, used, m.Felt, m.Stands);
        return new(HeightReason.HeldCostsMore, Lower(m, state) is { } lower && double.IsFinite(lower) ? Math.Max(0, lower - m.Mown) : 0);
    }

    /// <summary>What the best lower cut is expected to lose; null where none is possible.</summary>
    private double? Lower(Morning m, PlanState state)
    {
        var (least, used) = ((double?)null, solved.Grid.LevelsMm[state.Level]);
        foreach (var move in open)
        {
            if (move.CutMm >= used) continue;
            var sum = 0.0;
            for (var n = 0; n < canopy.Length; n++) sum += choices.Mown(m.T, canopy[n], stress[n], move, state.SetMm) / canopy.Length;
            least = least is { } l ? Math.Min(l, sum) : sum;
        }
        return least;
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
