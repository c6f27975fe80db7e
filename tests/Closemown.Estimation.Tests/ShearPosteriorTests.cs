namespace Closemown.Estimation.Tests;

/// <summary>Checks/posterior/shear-24 and shear-240: dense Laplace and a long exact sampler. [computed from published formula]</summary>
public sealed class ShearPosteriorTests(ITestOutputHelper output)
{
    /// <summary>Rasmussen and Williams 2006, 3.4; the file's laplace block, exact to 1e-9.</summary>
    [Theory]
    [InlineData(24)]
    [InlineData(240)]
    public void Laplace_block_is_reproduced(int steps)
    {
        var expected = CheckFile.Read($"posterior/shear-{steps}-posterior.json").GetProperty("laplace");
        var posterior = Solver.Solve(ShearModel.Of(steps).Build(), new() { Method = EstimateKind.Laplace });
        var (mean, covariance) = Reported(posterior);
        double[] mode = expected.Numbers("mode"), sd = expected.Numbers("sd");
        var table = expected.Table("covariance");
        double worstMean = 0, worstCovariance = 0;
        for (var i = 0; i < 11; i++)
        {
            worstMean = Math.Max(worstMean, Math.Abs(mean[i] - mode[i]) / sd[i]);
            for (var j = 0; j < 11; j++) worstCovariance = Math.Max(worstCovariance, Math.Abs(covariance[i, j] - table[i][j]) / (sd[i] * sd[j]));
        }

        var evidence = Math.Abs(posterior.LogEvidence - expected.Number("logEvidence"));
        output.WriteLine($"laplace {steps}: mode {worstMean:e1} sd, covariance {worstCovariance:e1}, evidence {evidence:e1}, Newton {posterior.NewtonSteps}");
        Assert.True(posterior.Settled);
        Assert.Equal(EstimateKind.Laplace, posterior.Kind);
        Assert.True(worstMean < 1e-8, $"mode off by {worstMean} sd");
        Assert.True(worstCovariance < 1e-8, $"covariance off by {worstCovariance}");
        Assert.True(evidence < 1e-8, $"evidence off by {evidence}");
    }

    /// <summary>The file's reference block (exact Gibbs sampler, Albert and Chib 1993) with its Monte Carlo errors.</summary>
    [Theory]
    [InlineData(24)]
    [InlineData(240)]
    public void Matched_moments_meet_the_sampler(int steps)
    {
        var file = CheckFile.Read($"posterior/shear-{steps}-posterior.json");
        var r = file.GetProperty("reference");
        var posterior = Solver.Solve(ShearModel.Of(steps).Build());
        Assert.True(posterior.Settled, posterior.Remark);
        Assert.Equal(EstimateKind.ExpectationPropagation, posterior.Kind);
        var (mean, covariance) = Reported(posterior);
        double[] refMean = r.Numbers("mean"), refSd = r.Numbers("sd"), error = r.Numbers("mcseMean");
        double worstMean = 0, lowRatio = 9, highRatio = 0, worstPoint = 0;
        for (var i = 0; i < 11; i++)
        {
            var sd = Math.Sqrt(covariance[i, i]);
            var gap = Math.Abs(mean[i] - refMean[i]);
            Assert.True(gap < (0.05 * refSd[i]) + error[i], $"mean {i} off by {gap / refSd[i]} sd");
            Assert.InRange(sd / refSd[i], 0.97, 1.03);
            worstMean = Math.Max(worstMean, gap / refSd[i]);
            (lowRatio, highRatio) = (Math.Min(lowRatio, sd / refSd[i]), Math.Max(highRatio, sd / refSd[i]));
            foreach (var (name, p) in new[] { ("q05", 0.05), ("q50", 0.5), ("q95", 0.95) })
            {
                var point = Math.Abs(mean[i] + (NormalMath.InversePhi(p) * sd) - r.Numbers(name)[i]) / refSd[i];
                Assert.True(point < 0.08, $"{name} of {i} off by {point} sd");
                worstPoint = Math.Max(worstPoint, point);
            }
        }

        var evidence = Math.Abs(posterior.LogEvidence - r.Number("logEvidence"));
        output.WriteLine($"moments {steps}: mean {worstMean:f4} sd, sd ratio {lowRatio:f4} to {highRatio:f4}, points {worstPoint:f4} sd, evidence {posterior.LogEvidence:f5} off {evidence:f5} (se {r.Number("logEvidenceSe")}), Newton {posterior.NewtonSteps}, sweeps {posterior.Sweeps}");
        Assert.True(evidence < 0.02, $"evidence off by {evidence}");
    }

    /// <summary>The file's ep block: the same fixed point by dense algebra, to the 12 printed digits.</summary>
    [Theory]
    [InlineData(24)]
    [InlineData(240)]
    public void Matched_moments_meet_the_dense_ones(int steps)
    {
        var expected = CheckFile.Read($"posterior/shear-{steps}-posterior.json").GetProperty("ep");
        var (mean, covariance) = Reported(Solver.Solve(ShearModel.Of(steps).Build()));
        double worstMean = 0, worstSd = 0;
        for (var i = 0; i < 11; i++)
        {
            var sd = expected.Numbers("sd")[i];
            worstMean = Math.Max(worstMean, Math.Abs(mean[i] - expected.Numbers("mean")[i]) / sd);
            worstSd = Math.Max(worstSd, Math.Abs((Math.Sqrt(covariance[i, i]) / sd) - 1));
        }

        output.WriteLine($"moments {steps} against dense: mean {worstMean:e1} sd, sd {worstSd:e1}");
        Assert.True(worstMean < 1e-8 && worstSd < 1e-8, $"off by {worstMean} sd and {worstSd}");
    }

    /// <summary>Six constants and then the five components of the last state, as the files report them.</summary>
    private static (double[] Mean, double[,] Covariance) Reported(Posterior p)
    {
        var g = p.LastState();
        var order = new[] { 5, 6, 7, 8, 9, 10, 0, 1, 2, 3, 4 };
        var covariance = new double[11, 11];
        for (var i = 0; i < 11; i++)
        {
            for (var j = 0; j < 11; j++) covariance[i, j] = g.Covariance[(order[i] * 11) + order[j]];
        }

        return ([.. order.Select(i => g.Mean[i])], covariance);
    }
}
