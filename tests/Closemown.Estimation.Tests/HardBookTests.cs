namespace Closemown.Estimation.Tests;

/// <summary>Books of any length, contradictory ones too: settled or said not to be, and never a number that is none.</summary>
public sealed class HardBookTests(ITestOutputHelper output)
{
    [Theory]
    [InlineData(1, 1.0)]
    [InlineData(2, 30.0)]
    [InlineData(10, 1000.0)]
    [InlineData(60, 5.0)]
    [InlineData(60, 3000.0)]
    [InlineData(300, 1.0)]
    [InlineData(300, 100.0)]
    [InlineData(1000, 10000.0)]
    [InlineData(2000, 1.0)]
    [InlineData(2000, 20.0)]
    public void Random_books(int steps, double wild)
    {
        for (var seed = 0; seed < Math.Max(2, 60 / steps); seed++)
        {
            var p = Solver.Solve(Book.Random(1 + (seed % 4), seed % 3, steps, 100 + seed, 0.7, wild, 1).Chain());
            Finite(p);
            if (seed == 0) output.WriteLine($"{steps} steps, {wild} spreads: {p.Kind}, settled {p.Settled}, Newton {p.NewtonSteps}, sweeps {p.Sweeps} {p.Remark}");
            Assert.True(p.Settled || p.Remark!.Length > 20);
            Assert.True(p.Kind == EstimateKind.ExpectationPropagation || !p.Settled || p.Kind == EstimateKind.Gaussian);
        }
    }

    /// <summary>Readings that exclude each other by 10⁴ of their spreads.</summary>
    [Theory]
    [InlineData(10)]
    [InlineData(1e3)]
    [InlineData(1e4)]
    public void Flat_contradiction(double far)
    {
        var chain = new ChainModel(["x"], []);
        chain.AddStep();
        chain.AddGaussian([Term.State(0, 0, 1)], 0, 5);
        chain.AddInterval([Term.State(0, 0, 1)], 0, far, double.PositiveInfinity, 1);
        chain.AddInterval([Term.State(0, 0, 1)], 0, double.NegativeInfinity, -far, 1);
        var p = Solver.Solve(chain);
        Finite(p);
        Assert.True(p.Settled, p.Remark);
        Assert.InRange(Math.Abs(p.StateMean(0, 0)), 0, 1e-6);
        Assert.True(p.LogEvidence < -0.9 * far * far, $"{p.LogEvidence}");
    }

    /// <summary>A reading a hundred thousand times as sharp as the prior, far out: full Newton steps fail there.</summary>
    [Theory]
    [InlineData(3, 1e-3)]
    [InlineData(20, 1e-4)]
    [InlineData(200, 1e-5)]
    public void Sharp_readings_far_from_the_start(double far, double sd)
    {
        var chain = new ChainModel(["x", "y"], ["c"]);
        chain.AddStep();
        for (var i = 0; i < 2; i++) chain.AddGaussian([Term.State(0, i, 1)], 0, 1);
        chain.AddGaussian([Term.Constant(0, 1)], 0, 1);
        chain.AddInterval([Term.State(0, 0, 1), Term.Constant(0, 1)], 0, far, far + 0.01, sd);
        chain.AddInterval([Term.State(0, 1, 1), Term.Constant(0, -1)], 0, far, double.PositiveInfinity, sd);
        chain.AddInterval([Term.State(0, 0, 1)], 0, double.NegativeInfinity, far / 2, sd);
        var p = Solver.Solve(chain);
        Finite(p);
        output.WriteLine($"far {far}, sd {sd}: {p.Kind}, settled {p.Settled}, Newton {p.NewtonSteps}, sweeps {p.Sweeps} {p.Remark}");
        Assert.True(p.Settled, p.Remark);
        Assert.InRange(p.StateMean(0, 0) + p.ConstantMean(0), far - (10 * sd), far + 0.01 + (10 * sd));
    }

    /// <summary>
    /// The same answer of the same predictor again and again, with nothing in between: one site between them, so mean and sd are exact. Site by
    /// site the sd was up to a third short (Cunningham, Hennig and Lacoste-Julien 2011, arXiv:1111.6832, on repeated limits). Exact values by sums.
    /// </summary>
    [Theory]
    [InlineData(3, 10)]
    [InlineData(30, 3)]
    [InlineData(100, 1)]
    public void Many_answers_on_one_side(int count, double spread)
    {
        var chain = new ChainModel(["x"], ["bias"]);
        chain.AddStep();
        chain.AddGaussian([Term.State(0, 0, 1)], 0, spread);
        chain.AddGaussian([Term.Constant(0, 1)], 0, spread);
        for (var k = 0; k < count; k++) chain.AddCategory([Term.State(0, 0, 1), Term.Constant(0, 1)], 0, [0.0], 1, 1);
        var p = Solver.Solve(chain);
        Assert.True(p.Settled, p.Remark);
        double z = 0, first = 0, second = 0, width = spread * Math.Sqrt(2);
        for (var s = -8 * width; s < 12 * width; s += width / 500)
        {
            var weight = Math.Exp((-0.5 * s * s / (width * width)) + (count * NormalMath.LogPhi(s)));
            (z, first, second) = (z + weight, first + (s * weight), second + (s * s * weight));
        }

        var (mean, variance) = p.Predict([Term.State(0, 0, 1), Term.Constant(0, 1)]);
        var (exact, sd) = (first / z, Math.Sqrt((second / z) - (first / z * (first / z))));
        output.WriteLine($"{count} alike, spread {spread}: sweeps {p.Sweeps}, mean {mean:f4} of {exact:f4}, sd {Math.Sqrt(variance):f4} of {sd:f4}");
        Assert.InRange(Math.Abs(mean - exact) / sd, 0, 1e-6);
        Assert.InRange(Math.Sqrt(variance) / sd, 1 - 1e-6, 1 + 1e-6);
    }

    [Fact]
    public void Five_hundred_answers_on_one_side_of_a_wide_start_settle()
    {
        var chain = new ChainModel([], ["x"]);
        chain.AddGaussian([Term.Constant(0, 1)], 0, 15);
        for (var k = 0; k < 500; k++) chain.AddCategory([Term.Constant(0, 1)], 0, [0.0], 1, 1);
        var p = Solver.Solve(chain);
        Assert.True(p.Settled, p.Remark);
        Assert.Equal(EstimateKind.ExpectationPropagation, p.Kind);
        Assert.InRange(p.ConstantMean(0), 0, 30);
        Assert.InRange(p.ConstantVariance(0), 1, 15 * 15);
    }

    [Fact]
    public void A_limit_that_is_hit_is_said()
    {
        var chain = ShearModel.Of(24).Build();
        var short1 = Solver.Solve(chain, new() { MaxNewtonSteps = 2 });
        Assert.False(short1.Settled);
        Assert.Equal(EstimateKind.Laplace, short1.Kind);
        Assert.Equal("The search for the most probable values stopped at its limit of 2 steps; what is shown is not settled.", short1.Remark);
        var short2 = Solver.Solve(chain, new() { MaxSweeps = 2 });
        Assert.False(short2.Settled);
        Assert.Equal(EstimateKind.Laplace, short2.Kind);
        Assert.Equal("Moment matching did not settle in 2 sweeps; the most probable values and their curvature (Laplace) are shown instead.", short2.Remark);
        var laplace = Solver.Solve(chain, new() { Method = EstimateKind.Laplace });
        Assert.Equal(laplace.LogEvidence, short2.LogEvidence, 1e-11);
        double[] mean = Book.Means(laplace), sd = Book.Sds(laplace), now = Book.Means(short2);
        for (var i = 0; i < mean.Length; i++) Assert.Equal(0, (now[i] - mean[i]) / sd[i], 1e-9);
    }

    private static void Finite(Posterior p)
    {
        Assert.All(Book.Means(p), x => Assert.True(double.IsFinite(x)));
        Assert.All(Book.Sds(p), x => Assert.True(double.IsFinite(x) && x > 0));
        Assert.True(double.IsFinite(p.LogEvidence));
    }
}
