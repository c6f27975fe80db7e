namespace Closemown.Estimation;

/// <summary>The Gaussian factors alone: assembled once, and where a search starts.</summary>
internal static class GaussianPart
{
    public static void Assemble(ChainModel model, Workspace w)
    {
        w.Gaussian.Reset(model.StepCount, model.StateSize, model.ConstantCount);
        w.GaussianLogs = 0;
        double product = 1;
        foreach (var k in w.Gaussians)
        {
            w.Gaussian.AddOuter(model.Rows, k, 1 / (w.Sd[k] * w.Sd[k]));
            product *= w.Sd[k];
            if (product is > 1e-150 and < 1e150) continue;
            w.GaussianLogs += Math.Log(product);
            product = 1;
        }

        w.GaussianLogs += Math.Log(product) + (w.GaussianCount * NormalMath.LogRoot2Pi);
    }

    /// <summary>Sets U to the solution of the Gaussian factors alone (the priors carried through the actions).</summary>
    /// <remarks>Where they alone leave something free, intervals stand in as rough Gaussian readings, for the start only.</remarks>
    /// <exception cref="EstimationException">Nothing ties a variable.</exception>
    public static void Start(ChainModel model, Workspace w)
    {
        Array.Clear(w.U);
        Array.Clear(w.Gradient);
        Pull(model, w);
        Factorise(model, w);
        w.Elimination.Solve(w.Step);
        Array.Copy(w.Step, w.U, w.U.Length);
    }

    /// <summary>Sets U from an earlier posterior; steps after its last follow by the Gaussian factors from there.</summary>
    /// <returns>False where the Gaussian factors leave such a step free.</returns>
    public static bool Continue(ChainModel model, Workspace w, Posterior warm)
    {
        int d = model.StateSize, m = model.ConstantCount, known = Math.Min(warm.StepCount, model.StepCount), at = known * d;
        Array.Copy(warm.Mean, w.U, at);
        Array.Copy(warm.Mean, warm.StepCount * d, w.U, w.StateCount, m);
        if (known == model.StepCount) return true;
        for (var i = at; i < w.StateCount; i++) w.U[i] = known > 0 ? w.U[i - d] : 0;
        Array.Clear(w.Gradient);
        Pull(model, w);
        w.Chain.CopyFrom(w.Gaussian);
        if (!w.Elimination.Factorise(w.Chain, w.Gradient, known)) return false;
        w.Elimination.Solve(w.Step);
        for (var i = at; i < w.StateCount; i++) w.U[i] += w.Step[i];
        return true;
    }

    /// <summary>Sets the prior spreads: those of the Gaussian factors alone. The chain's factor is lost.</summary>
    public static void Spreads(ChainModel model, Workspace w)
    {
        Factorise(model, w);
        w.Selected.Fill(w.Chain);
        for (var i = 0; i < w.PriorSd.Length; i++) w.PriorSd[i] = Math.Sqrt(Math.Max(0, w.Chain.DiagonalAt(i)));
    }

    /// <summary>Adds the Gaussian factors' slope at U to the gradient; leaves their predictors in Eta.</summary>
    public static void Pull(ChainModel model, Workspace w)
    {
        var rows = model.Rows;
        foreach (var k in w.Gaussians)
        {
            var eta = rows.Dot(k, w.U, model.StateSize, w.StateCount) - rows.Offset[k];
            w.Eta[k] = eta;
            rows.AddTo(k, -eta / (w.Sd[k] * w.Sd[k]), w.Gradient, model.StateSize, w.StateCount);
        }
    }

    /// <summary>The Gaussian factors' predictors at U, into Eta.</summary>
    public static void Predict(ChainModel model, Workspace w)
    {
        var rows = model.Rows;
        foreach (var k in w.Gaussians) w.Eta[k] = rows.Dot(k, w.U, model.StateSize, w.StateCount) - rows.Offset[k];
    }

    /// <summary>Factorises the Gaussian factors, with rough intervals where they do not suffice.</summary>
    private static void Factorise(ChainModel model, Workspace w)
    {
        w.Chain.CopyFrom(w.Gaussian);
        if (w.Elimination.Factorise(w.Chain, w.Gradient)) return;
        if (w.IntervalCount == 0) throw Untied.Explain(model, w);
        var rows = model.Rows;
        w.Chain.CopyFrom(w.Gaussian);
        foreach (var k in w.Intervals)
        {
            var (precision, centre) = Rough(rows, w.Sd[k], k);
            w.Chain.AddOuter(rows, k, precision);
            var eta = rows.Dot(k, w.U, model.StateSize, w.StateCount) - rows.Offset[k];
            rows.AddTo(k, (centre - eta) * precision, w.Gradient, model.StateSize, w.StateCount);
        }

        if (!w.Elimination.Factorise(w.Chain, w.Gradient)) throw Untied.Explain(model, w);
    }

    private static (double Precision, double Centre) Rough(FactorRows rows, double sd, int k)
    {
        double low = rows.Low[k], high = rows.High[k];
        if (double.IsInfinity(low)) return (0.25 / (sd * sd), high - sd);
        if (double.IsInfinity(high)) return (0.25 / (sd * sd), low + sd);
        return (1 / ((sd * sd) + ((high - low) * (high - low) / 12)), 0.5 * (low + high));
    }
}
