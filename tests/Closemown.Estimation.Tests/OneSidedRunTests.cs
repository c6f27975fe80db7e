namespace Closemown.Estimation.Tests;

/// <summary>A walk of which every reading says the same thing ("folds", "folds", …), against an exact filter on a grid.</summary>
/// <remarks>
/// The hardest ordinary book: the state is bounded on one side and otherwise free. Bounds are what was measured, with a little room: the
/// mean comes out, the sd a fifth to a third short (Cunningham, Hennig and Lacoste-Julien 2011, arXiv:1111.6832). They hold the present
/// quality, so that a change is seen; they are no outside requirement.
/// </remarks>
public sealed class OneSidedRunTests(ITestOutputHelper output)
{
    private const double StartMean = 20, StartSd = 15, ReadingSd = 5;

    [Theory]
    [InlineData(1.0, 30)]
    [InlineData(1.0, 300)]
    [InlineData(0.1, 30)]
    public void The_mean_comes_out_and_the_sd_is_short(double noise, int count)
    {
        var chain = new ChainModel(["x"], []);
        chain.AddStep();
        chain.AddGaussian([Term.State(0, 0, 1)], StartMean, StartSd);
        for (var k = 0; k < count; k++)
        {
            var t = chain.AddStep();
            chain.AddGaussian([Term.State(t, 0, 1), Term.State(t - 1, 0, -1)], 0, noise);
            chain.AddCategory([Term.State(t, 0, 1)], 0, [0.0], 1, ReadingSd);
        }

        var (mean, sd, logEvidence) = Grid(noise, count);
        var moments = Solver.Solve(chain);
        var laplace = Solver.Solve(chain, new() { Method = EstimateKind.Laplace });
        Assert.True(moments.Settled, moments.Remark);
        double Off(Posterior p) => Math.Abs(p.StateMean(count, 0) - mean) / sd;
        double Ratio(Posterior p) => Math.Sqrt(p.StateVariance(count, 0)) / sd;
        output.WriteLine($"run of {count}, noise {noise}: moments mean {Off(moments):f3} sd, sd ratio {Ratio(moments):f3}, evidence {moments.LogEvidence - logEvidence:f3}, sweeps {moments.Sweeps}; Laplace {Off(laplace):f3}, {Ratio(laplace):f3}, {laplace.LogEvidence - logEvidence:f3}");
        Assert.InRange(Off(moments), 0, 0.1);
        Assert.InRange(Ratio(moments), 0.75, 1);
        Assert.InRange(Math.Abs(moments.LogEvidence - logEvidence), 0, 0.3);
        Assert.True(Off(laplace) > Off(moments));
    }

    /// <summary>The filter's integral by sums on a grid of an eighth of the noise.</summary>
    private static (double Mean, double Sd, double LogEvidence) Grid(double noise, int count)
    {
        const int reach = 48;
        double low = -40, h = noise / 8;
        var n = (int)(180 / h);
        var x = Enumerable.Range(0, n).Select(i => low + (i * h)).ToArray();
        var kernel = Enumerable.Range(-reach, (2 * reach) + 1).Select(j => NormalMath.Density(j * h / noise) * h / noise).ToArray();
        var likelihood = x.Select(v => NormalMath.Phi(v / ReadingSd)).ToArray();
        var g = x.Select(v => NormalMath.Density((v - StartMean) / StartSd) / StartSd).ToArray();
        var log = 0.0;
        for (var k = 0; k < count; k++)
        {
            var next = new double[n];
            for (var i = reach; i < n - reach; i++)
            {
                var sum = 0.0;
                for (var j = 0; j < kernel.Length; j++) sum += kernel[j] * g[i + j - reach];
                next[i] = sum * likelihood[i];
            }

            var z = next.Sum() * h;
            log += Math.Log(z);
            g = [.. next.Select(v => v / z)];
        }

        var mean = x.Zip(g, (a, b) => a * b).Sum() * h;
        return (mean, Math.Sqrt(x.Zip(g, (a, b) => (a - mean) * (a - mean) * b).Sum() * h), log);
    }
}
