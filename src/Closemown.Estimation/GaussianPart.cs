namespace Closemown.Estimation;

/// <summary>The Gaussian factors alone: assembled once, and where a search starts.</summary>
internal static class GaussianPart
{
    public static void Assemble(ChainModel model, Workspace w)
    {
        w.Gaussian.Reset(model.StepCount, model.StateSize, model.ConstantCount);
        var rows = model.Rows;
        foreach (var k in w.Gaussians) w.Gaussian.AddOuter(rows, k, 1 / (w.Sd[k] * w.Sd[k]));
    }

    /// <summary>Sets U to the solution of the Gaussian factors alone (the priors carried through the actions) and the prior spreads.</summary>
    /// <remarks>Where they alone leave something free, intervals stand in as rough Gaussian readings, for the start only.</remarks>
    /// <exception cref="EstimationException">Nothing ties a variable.</exception>
    public static void Start(ChainModel model, Workspace w)
    {
        var rough = false;
        var h = w.Gaussian;
        if (!w.Elimination.Factorise(h))
        {
            if (w.IntervalCount == 0) throw Untied.Explain(model, w, h);
            rough = true;
            h = w.Precision;
            h.CopyFrom(w.Gaussian);
            foreach (var k in w.Intervals) h.AddOuter(model.Rows, k, Rough(model.Rows, w.Sd[k], k).Precision);

            if (!w.Elimination.Factorise(h)) throw Untied.Explain(model, w, h);
        }

        Array.Clear(w.U);
        for (var round = 0; round < 2; round++)
        {
            Gradient(model, w, rough);
            w.Elimination.Solve(w.Step);
            for (var i = 0; i < w.U.Length; i++) w.U[i] += w.Step[i];
        }

        w.Selected.Fill(w.Elimination, w.Covariance);
        Spreads(w);
    }

    /// <summary>Sets U from an earlier posterior; steps after its last follow by the Gaussian factors from there.</summary>
    public static void Continue(ChainModel model, Workspace w, Posterior warm)
    {
        int d = model.StateSize, m = model.ConstantCount, known = Math.Min(warm.StepCount, model.StepCount), at = known * d;
        if (known == model.StepCount || w.Elimination.Factorise(w.Gaussian, known))
        {
            Array.Copy(warm.Mode, w.U, at);
            Array.Copy(warm.Mode, warm.StepCount * d, w.U, w.StateCount, m);
            if (known == model.StepCount) return;
            for (var i = at; i < w.StateCount; i++) w.U[i] = known > 0 ? w.U[i - d] : 0;
            Gradient(model, w, false);
            w.Elimination.Solve(w.Step);
            for (var i = at; i < w.StateCount; i++) w.U[i] += w.Step[i];
        }
    }

    private static void Gradient(ChainModel model, Workspace w, bool rough)
    {
        var rows = model.Rows;
        Array.Clear(w.Step);
        foreach (var k in w.Gaussians) Pull(k, 1 / (w.Sd[k] * w.Sd[k]), 0);
        if (!rough) return;
        foreach (var k in w.Intervals)
        {
            var (precision, centre) = Rough(rows, w.Sd[k], k);
            Pull(k, precision, centre);
        }

        void Pull(int k, double precision, double centre)
        {
            var eta = rows.Dot(k, w.U, model.StateSize, w.StateCount) - rows.Offset[k];
            rows.AddTo(k, (centre - eta) * precision, w.Step, model.StateSize, w.StateCount);
        }
    }

    private static (double Precision, double Centre) Rough(FactorRows rows, double sd, int k)
    {
        double low = rows.Low[k], high = rows.High[k];
        if (double.IsInfinity(low)) return (0.25 / (sd * sd), high - sd);
        if (double.IsInfinity(high)) return (0.25 / (sd * sd), low + sd);
        return (1 / ((sd * sd) + ((high - low) * (high - low) / 12)), 0.5 * (low + high));
    }

    private static void Spreads(Workspace w)
    {
        var sigma = w.Covariance;
        int d = sigma.D, m = sigma.M;
        for (var i = 0; i < w.StateCount; i++) w.PriorSd[i] = Math.Sqrt(Math.Max(0, sigma.Diagonal[(i * d) + (i % d)]));
        for (var j = 0; j < m; j++) w.PriorSd[w.StateCount + j] = Math.Sqrt(Math.Max(0, sigma.Corner[(j * m) + j]));
    }
}
