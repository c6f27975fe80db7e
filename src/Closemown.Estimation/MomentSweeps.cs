namespace Closemown.Estimation;

/// <summary>Expectation propagation: every interval reading, or all of one predictor together, becomes a Gaussian pseudo-reading of it.</summary>
/// <remarks>
/// A site on η is exp(−½τη² + νη). In each sweep all sites are renewed at once from their cavities: N(m, v) of the predictor
/// less the site is N(m_c, v_c); with S² = σ² + v_c the interval's f′, f″ at (limit − m_c)/S give the matched moments, and
/// τ = −f″/(σ² + v_c(1 + f″)), ν = (S f′ − m_c f″)/(σ² + v_c(1 + f″)): never negative, as 1 + f″ is a variance. Minka 2001, Expectation
/// propagation for approximate Bayesian inference, UAI; Rasmussen and Williams 2006, 3.6. Sweeps run undamped from the Laplace
/// approximation; the share of a renewal is halved only after a sweep that did not shrink the mismatch. Readings of the very same predictor
/// have one site between them (<see cref="SiteGroups"/>), whose moments are integrated (<see cref="TiltedRepeats"/>).
/// </remarks>
internal static class MomentSweeps
{
    /// <summary>Below this a mismatch that no longer shrinks is rounding.</summary>
    private const double RoundingLevel = 1e-7;

    internal enum Outcome
    {
        Settled,
        Limit,
        Broke,
    }

    /// <summary>Sweeps from the sites as they stand, at U; leaves the matched mean in U and the covariance blocks in place.</summary>
    public static Outcome Run(ChainModel model, Workspace w, SolveOptions options, out int sweeps, out double logEvidence)
    {
        double before = double.PositiveInfinity, share = 1;
        var stalled = 0;
        for (sweeps = 1; ; sweeps++)
        {
            if (!Condition(model, w)) return Broken(out logEvidence);
            if (!Match(model, w, out var mismatch, out logEvidence)) return Broken(out logEvidence);
            if (mismatch <= options.SweepTolerance) return Outcome.Settled;
            var grew = mismatch > (1 - (0.02 * share)) * before;
            stalled = grew ? stalled + 1 : 0;
            if (mismatch < RoundingLevel && stalled >= 4) return Outcome.Settled;
            if (sweeps >= options.MaxSweeps) return Outcome.Limit;
            if (grew) share = Math.Max(0.05, 0.5 * share);
            before = mismatch;
            foreach (var k in w.Sites.First)
            {
                w.SitePrecision[k] += share * (w.NewPrecision[k] - w.SitePrecision[k]);
                w.SiteShift[k] += share * (w.NewShift[k] - w.SiteShift[k]);
            }
        }
    }

    private static Outcome Broken(out double logEvidence)
    {
        logEvidence = double.NaN;
        return Outcome.Broke;
    }

    /// <summary>The Laplace approximation as sites: same slope and curvature at the mode.</summary>
    public static void StartFromMode(FactorRows rows, Workspace w)
    {
        foreach (var k in w.Intervals)
        {
            w.SitePrecision[k] = -w.F2[k] / (w.Sd[k] * w.Sd[k]);
            w.SiteShift[k] = (w.F1[k] / w.Sd[k]) + (w.SitePrecision[k] * w.Eta[k]);
        }

        w.Sites.Gather(rows, w);
    }

    /// <summary>Mean and covariance blocks of the Gaussian factors times the sites.</summary>
    private static bool Condition(ChainModel model, Workspace w)
    {
        var rows = model.Rows;
        int d = model.StateSize, c = w.StateCount;
        w.Chain.CopyFrom(w.Gaussian);
        Array.Clear(w.Gradient);
        GaussianPart.Pull(model, w);
        foreach (var k in w.Sites.First)
        {
            var eta = rows.Dot(k, w.U, d, c) - rows.Offset[k];
            w.Chain.AddOuter(rows, k, w.SitePrecision[k]);
            rows.AddTo(k, w.SiteShift[k] - (w.SitePrecision[k] * eta), w.Gradient, d, c);
        }

        if (!w.Elimination.Factorise(w.Chain, w.Gradient)) return false;
        w.Elimination.Solve(w.Step);
        for (var i = 0; i < w.U.Length; i++) w.U[i] += w.Step[i];
        w.Selected.Fill(w.Chain);
        return true;
    }

    /// <summary>New sites from the cavities, the largest mismatch of moments, and the evidence at the present sites.</summary>
    private static bool Match(ChainModel model, Workspace w, out double mismatch, out double logEvidence)
    {
        var rows = model.Rows;
        mismatch = 0;
        logEvidence = Evidence.OfGaussian(w.U.Length, w.Elimination);
        GaussianPart.Predict(model, w);
        logEvidence += Evidence.OfGaussians(w);
        for (var s = 0; s < w.Sites.Count; s++)
        {
            var k = w.Sites.First[s];
            var m = rows.Dot(k, w.U, model.StateSize, w.StateCount) - rows.Offset[k];
            double tau = w.SitePrecision[k], nu = w.SiteShift[k];
            var v = w.Chain.Quadratic(rows, k);
            var rest = 1 - (v * tau);
            if (!(rest > 1e-12 && v > 0)) return false;
            var vc = v / rest;
            var mc = (m - (v * nu)) / rest;
            var read = w.Sites.Tilt(rows, w, s, mc, vc);
            (w.NewPrecision[k], w.NewShift[k]) = (read.Precision, read.Shift);
            logEvidence += read.F + Evidence.OfSite(tau, nu, m, mc, vc);
            var meanGap = Math.Abs(read.Mean - m) / Math.Sqrt(v);
            var varianceGap = Math.Abs((read.Variance / v) - 1);
            mismatch = Math.Max(mismatch, Math.Max(meanGap, varianceGap));
            if (!double.IsFinite(mismatch)) return false;
        }

        return double.IsFinite(logEvidence);
    }
}
