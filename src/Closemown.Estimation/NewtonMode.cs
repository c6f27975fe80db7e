namespace Closemown.Estimation;

/// <summary>The most probable values by Newton's method with a line search and a trust rule.</summary>
/// <remarks>
/// The objective is concave, so a step H⁻¹g always climbs; it is shortened to a largest move in units of the prior spreads and
/// halved until it climbs by more than rounding. The search ends on the Newton decrement gᵀH⁻¹g, which is the squared distance to the
/// mode in posterior spreads. Boyd and Vandenberghe 2004, Convex Optimization, 9.5; Rasmussen and Williams 2006, 3.4.
/// </remarks>
internal static class NewtonMode
{
    public const double Arrived = 1e-20;

    /// <summary>Within a third of a spread moment matching goes on faster than Newton's method does.</summary>
    public const double Rough = 0.1;

    /// <summary>Within 1e-5 spreads full steps converge quadratically, and gains in the objective drown in rounding: none is asked for.</summary>
    private const double Near = 1e-10;

    internal enum Outcome
    {
        Settled,
        Limit,
        Stuck,
    }

    /// <summary>Moves U to the mode; leaves precision, factor and F, F1, F2, Eta as they are there.</summary>
    /// <exception cref="EstimationException">A variable is free, or a reading lies beyond what numbers hold.</exception>
    public static Outcome Find(ChainModel model, Workspace w, SolveOptions options, double until, out int steps)
    {
        var radius = 30.0;
        var measured = false;
        var before = double.PositiveInfinity;
        for (steps = 0; ; steps++)
        {
            var decrement = Prepare(model, w, measured);
            if (decrement <= until || (before <= Near && decrement > 0.25 * before)) return Outcome.Settled;
            if (steps == options.MaxNewtonSteps) return Outcome.Limit;
            var shortened = decrement <= radius * radius ? 1 : Shorten(model, w, radius);
            measured = decrement > Near || shortened < 1;
            var share = measured ? LineSearch(model, w, decrement * shortened) : 1;
            if (share == 0)
            {
                Curvature(model, w, false);
                return Outcome.Stuck;
            }

            if (measured) TakeTrial(w);
            if (shortened < 1 && share == 1) radius *= 4;
            for (var i = 0; i < w.U.Length; i++) w.U[i] += share * w.Step[i];
            before = shortened < 1 || share < 1 ? double.PositiveInfinity : decrement;
        }
    }

    /// <summary>Likelihood, precision, factor and Newton step at U; returns the decrement.</summary>
    private static double Prepare(ChainModel model, Workspace w, bool measured)
    {
        Curvature(model, w, measured);
        var gradient = w.Gradient;
        w.Elimination.Solve(w.Step);
        var decrement = 0.0;
        for (var i = 0; i < gradient.Length; i++) decrement += gradient[i] * w.Step[i];
        if (!double.IsFinite(decrement)) throw new EstimationException("The entries", "contradict each other beyond what numbers can hold", ErrorText.CureFar);
        return decrement;
    }

    /// <summary>Likelihood (unless the line search measured it), gradient at U and the factor of the precision there.</summary>
    public static void Curvature(ChainModel model, Workspace w, bool measured)
    {
        var rows = model.Rows;
        int d = model.StateSize, c = w.StateCount;
        w.Chain.CopyFrom(w.Gaussian);
        Array.Clear(w.Gradient);
        GaussianPart.Pull(model, w);
        foreach (var k in w.Intervals)
        {
            if (!measured)
            {
                w.Eta[k] = rows.Dot(k, w.U, d, c) - rows.Offset[k];
                Likelihood(rows, w.Sd[k], k, w.Eta[k], out w.F[k], out w.F1[k], out w.F2[k]);
            }

            if (!double.IsFinite(w.F[k])) throw Untied.FarAway(model, w, k, w.Eta[k]);
            w.Chain.AddOuter(rows, k, -w.F2[k] / (w.Sd[k] * w.Sd[k]));
            rows.AddTo(k, w.F1[k] / w.Sd[k], w.Gradient, d, c);
        }

        if (!w.Elimination.Factorise(w.Chain, w.Gradient)) throw Untied.Explain(model, w);
    }

    private static void Likelihood(FactorRows rows, double sd, int k, double eta, out double f, out double f1, out double f2)
    {
        IntervalLikelihood.Moments((rows.Low[k] - eta) / sd, (rows.High[k] - eta) / sd, (rows.High[k] - rows.Low[k]) / sd, out f, out f1, out f2, out _);
        f2 = Math.Min(0, f2);
    }

    /// <summary>What the line search measured last becomes the likelihood at U.</summary>
    private static void TakeTrial(Workspace w)
    {
        (w.Eta, w.TrialEta) = (w.TrialEta, w.Eta);
        (w.F, w.TrialF) = (w.TrialF, w.F);
        (w.F1, w.TrialF1) = (w.TrialF1, w.F1);
        (w.F2, w.TrialF2) = (w.TrialF2, w.F2);
    }

    /// <summary>The trust rule: no unknown moves more than the radius in its prior spreads.</summary>
    /// <remarks>A move in posterior spreads is at most the root of the decrement, and prior spreads are wider: asked for only beyond that.</remarks>
    private static double Shorten(ChainModel model, Workspace w, double radius)
    {
        GaussianPart.Spreads(model, w);
        var most = 0.0;
        for (var i = 0; i < w.Step.Length; i++) most = Math.Max(most, Math.Abs(w.Step[i]) / w.PriorSd[i]);
        if (!(most > radius)) return 1;
        var scale = radius / most;
        for (var i = 0; i < w.Step.Length; i++) w.Step[i] *= scale;
        return scale;
    }

    /// <summary>The largest share 1, ½, ¼ … of the step that climbs, or 0 when none does.</summary>
    /// <remarks>Gains are summed factor by factor, so a huge objective does not drown a small gain; what is left of rounding is allowed for.</remarks>
    private static double LineSearch(ChainModel model, Workspace w, double slope)
    {
        var rows = model.Rows;
        foreach (var k in w.Gaussians) w.EtaStep[k] = rows.Dot(k, w.Step, model.StateSize, w.StateCount);
        foreach (var k in w.Intervals) w.EtaStep[k] = rows.Dot(k, w.Step, model.StateSize, w.StateCount);
        for (var share = 1.0; share > 1e-12; share *= 0.5)
        {
            double gain = 0, size = 0;
            foreach (var k in w.Gaussians)
            {
                var move = share * w.EtaStep[k];
                var part = 0.5 * (move / w.Sd[k]) * (((2 * w.Eta[k]) + move) / w.Sd[k]);
                gain -= part;
                size += Math.Abs(part);
            }

            foreach (var k in w.Intervals)
            {
                w.TrialEta[k] = w.Eta[k] + (share * w.EtaStep[k]);
                Likelihood(rows, w.Sd[k], k, w.TrialEta[k], out w.TrialF[k], out w.TrialF1[k], out w.TrialF2[k]);
                gain += w.TrialF[k] - w.F[k];
                size += Math.Abs(w.TrialF[k]) + Math.Abs(w.F[k]);
            }

            if (gain >= (1e-4 * share * slope) - (1e-15 * size)) return share;
        }

        return 0;
    }
}
