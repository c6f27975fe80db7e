using CsCheck;

namespace Closemown.Estimation.Tests;

public sealed class ForwardPassTests(ITestOutputHelper output)
{
    /// <summary>For Gaussian books the filter and the whole-record solution agree at the last state (Rauch, Tung and Striebel 1965).</summary>
    [Fact]
    public void Gaussian_books_end_as_the_solver_says()
    {
        double worst = 0;
        Gen.Select(Gen.Int[1, 4], Gen.Int[0, 3], Gen.Int[1, 30], Gen.Int[0, 1_000_000]).Sample((d, m, steps, seed) =>
        {
            var book = Book.Random(d, m, steps, seed, intervals: 0);
            worst = Math.Max(worst, Gap(Solver.Solve(book.Chain()).LastState(), Filter(book).Current));
        }, iter: 80, threads: 1);
        output.WriteLine($"forward pass, Gaussian: {worst:e1} sd");
        Assert.True(worst < 1e-9, $"off by {worst}");
    }

    /// <summary>
    /// With categories one pass only comes near the whole-record answer. The bounds are what was measured (0.27 sd of a state and 0.41 of
    /// a constant on the long book) with a little room: they hold the present quality, they are no outside requirement.
    /// </summary>
    [Theory]
    [InlineData(24)]
    [InlineData(240)]
    public void Category_books_end_near_what_the_solver_says(int steps)
    {
        var shear = ShearModel.Of(steps);
        var whole = Solver.Solve(shear.Build()).LastState();
        var pass = shear.Filter();
        double state = 0, constant = 0;
        for (var i = 0; i < 11; i++)
        {
            var gap = Math.Abs(whole.Mean[i] - pass.Mean[i]) / Math.Sqrt(whole.Covariance[i * 12]);
            if (i < 5) state = Math.Max(state, gap);
            else constant = Math.Max(constant, gap);
        }

        output.WriteLine($"forward pass, shear {steps}: state {state:f3} sd, constants {constant:f3} sd");
        Assert.True(state < 0.3, $"a state is off by {state}");
        Assert.True(constant < 0.45, $"a constant is off by {constant}");
    }

    /// <summary>A chain whose noise is far below what is uncertain: the solver's information form against the covariance form.</summary>
    [Theory]
    [InlineData(1e-3, 1e-9)]
    [InlineData(1e-4, 1e-7)]
    [InlineData(1e-5, 1e-5)]
    public void Nearly_noise_free_moves_keep_their_digits(double sd, double tolerance)
    {
        var book = Book.Random(2, 2, 20, 5, intervals: 0);
        for (var t = 0; t < book.Moves.Count; t++) book.Moves[t] = book.Moves[t] with { Sd = [sd, sd] };
        var gap = Gap(Solver.Solve(book.Chain()).LastState(), Filter(book).Current);
        output.WriteLine($"noise {sd} beside starts of 0.5 to 3.5: {gap:e1}");
        Assert.True(gap < tolerance, $"off by {gap}");
    }

    [Fact]
    public void Category_probabilities_sum_to_one_and_follow_the_predictor() =>
        Gen.Select(Gen.Double[-500, 500], Gen.Double[0, 100], Gen.Double[0.01, 20]).Sample((mean, variance, sd) =>
        {
            var start = new GaussianState(["x"], [], [mean], [variance]);
            var p = new ForwardPass(start).CategoryProbabilities([Term.State(9, 0, 1)], 0, [-40, 0, 3.5, 3.6], sd);
            Assert.Equal(1, p.Sum(), 1e-14);
            Assert.All(p, x => Assert.InRange(x, 0, 1));
            Assert.Equal(NormalMath.Phi((-40 - mean) / Math.Sqrt(variance + (sd * sd))), p[0], 1e-15);
        }, iter: 1000, threads: 1);

    [Fact]
    public void A_copy_goes_its_own_way()
    {
        var pass = new ForwardPass(new GaussianState(["x"], ["c"], [1, 2], [4, 1, 1, 9]));
        var copy = pass.Copy();
        copy.ObserveGaussian([Term.State(0, 0, 1)], 0, 1);
        Assert.Equal([1, 2], pass.Current.Mean);
        Assert.Equal(0.2, copy.Current.Mean[0], 1e-15);
        Assert.Equal(0.8, copy.Current.Covariance[0], 1e-15);
    }

    /// <summary>For Gaussian readings the summed log predictive densities are the exact evidence.</summary>
    [Fact]
    public void Evidence_of_a_pass_over_Gaussian_readings_is_the_solvers()
    {
        for (var seed = 0; seed < 20; seed++)
        {
            var book = Book.Random(1 + (seed % 3), seed % 4, 1 + seed, seed, intervals: 0);
            Filter(book, out var log);
            var expected = Solver.Solve(book.Chain()).LogEvidence;
            Assert.Equal(expected, log, 1e-10 * Math.Max(1, Math.Abs(expected)));
        }
    }

    /// <summary>One interval alone: log of the averaged probability, also where the probability itself is below double range.</summary>
    [Theory]
    [InlineData(0.3, 2)]
    [InlineData(-9, -8)]
    [InlineData(60, double.PositiveInfinity)]
    [InlineData(300, 301)]
    public void Evidence_of_an_interval_is_its_log_probability(double low, double high)
    {
        var pass = new ForwardPass(new GaussianState(["x"], [], [0], [3]));
        var log = pass.ObserveInterval([Term.State(0, 0, 1)], 0, low, high, 1);
        IntervalLikelihood.Evaluate(low / 2, high / 2, out var expected, out _, out _);
        Assert.Equal(expected, log, 1e-13 * Math.Abs(expected));
        var chain = new ChainModel(["x"], []);
        chain.AddStep();
        chain.AddGaussian([Term.State(0, 0, 1)], 0, Math.Sqrt(3));
        chain.AddInterval([Term.State(0, 0, 1)], 0, low, high, 1);
        Assert.Equal(Solver.Solve(chain).LogEvidence, log, 1e-9 * Math.Abs(expected));
    }

    [Fact]
    public void Evidences_of_all_categories_make_one()
    {
        var start = new GaussianState(["x"], ["c"], [1, 2], [4, 1, 1, 9]);
        var pass = new ForwardPass(start.Copy());
        var sum = 0.0;
        for (var k = 0; k < 4; k++)
        {
            pass.CopyFrom(start);
            sum += Math.Exp(pass.ObserveCategory([Term.State(0, 0, 1), Term.Constant(0, -1)], 0, [-4, 0, 3.5], k, 2));
        }

        Assert.Equal(1, sum, 1e-14);
    }

    [Fact]
    public void A_pass_can_be_set_back_without_new_memory()
    {
        var start = new GaussianState(["x"], ["c"], [1, 2], [4, 1, 1, 9]);
        var pass = new ForwardPass(start);
        Term[] terms = [Term.State(0, 0, 1)];
        for (var warming = 0; warming < 2; warming++) pass.ObserveInterval(terms, 0, 0, 1, 1);
        var first = pass.Current.Copy();
        pass.CopyFrom(start);
        Assert.Equal(start.Mean, pass.Current.Mean);
        Assert.Equal(start.Covariance, pass.Current.Covariance);
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var round = 0; round < 100; round++)
        {
            pass.CopyFrom(start);
            pass.ObserveInterval(terms, 0, 0, 1, 1);
            pass.ObserveInterval(terms, 0, 0, 1, 1);
        }

        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
        Assert.Equal(first.Mean, pass.Current.Mean);
        Assert.Throws<ArgumentException>(() => pass.CopyFrom(new GaussianState(["x"], [], [1], [4])));
    }

    /// <summary>Components that a move leaves as they are, and weights that are zero, are passed over: the plain products must come out all the same.</summary>
    [Fact]
    public void A_move_that_leaves_most_as_it_is_equals_the_plain_products() => Gen.Select(Gen.Int[1, 7], Gen.Int[0, 15], Gen.Int[0, 1_000_000]).Sample((d, m, seed) =>
    {
        var chance = new Random(seed);
        var n = d + m;
        var root = Enumerable.Range(0, n * n).Select(_ => chance.NextDouble() - 0.5).ToArray();
        var start = Times(root, root, n, turned: true);
        var mean = Enumerable.Range(0, n).Select(_ => chance.NextDouble()).ToArray();
        var pass = new ForwardPass(new GaussianState([.. Enumerable.Range(0, d).Select(i => $"x{i}")], [.. Enumerable.Range(0, m).Select(j => $"c{j}")], [.. mean], [.. start]));
        var map = new double[n * n];
        for (var i = 0; i < n; i++) map[i * (n + 1)] = 1;
        for (var i = 0; i < d; i++)
        {
            if (chance.Next(2) == 0) map[i * (n + 1)] = chance.Next(3) * 0.5;
            if (chance.Next(2) == 0) map[(i * n) + chance.Next(n)] = chance.NextDouble();
        }
        var (offset, sd) = (Some(), Some());
        double[] a = [.. Enumerable.Range(0, d * d).Select(k => map[(k / d * n) + (k % d)])], b = [.. Enumerable.Range(0, d * m).Select(k => map[(k / m * n) + d + (k % m)])];
        pass.Move(a, b, offset, sd);
        var after = Times(Times(map, start, n, turned: false), map, n, turned: true);
        for (var i = 0; i < n; i++)
        {
            Assert.Equal(Enumerable.Range(0, n).Sum(k => map[(i * n) + k] * mean[k]) + (i < d ? offset[i] : 0), pass.Current.Mean[i], 1e-13);
            for (var j = 0; j < n; j++)
            {
                Assert.Equal(after[(i * n) + j] + (i == j && i < d ? sd[i] * sd[i] : 0), pass.Current.Covariance[(i * n) + j], 1e-13);
                Assert.Equal(pass.Current.Covariance[(i * n) + j], pass.Current.Covariance[(j * n) + i]);
            }
        }

        double[] Some() => [.. Enumerable.Range(0, d).Select(_ => chance.Next(2) * chance.NextDouble())];
    }, iter: 300, threads: 1);

    [Fact]
    public void The_mean_of_two_passes_lies_halfway_in_every_number() => Gen.Int[1, 9].Sample(n =>
    {
        string[] names = [.. Enumerable.Range(0, n).Select(i => $"x{i}")];
        var pass = new ForwardPass(new GaussianState(names, [], [.. Enumerable.Range(0, n).Select(i => i + 1.0)], [.. Enumerable.Range(0, n * n).Select(i => 2.0 * i)]));
        pass.MeanWith(new GaussianState(names, [], new double[n], [.. Enumerable.Range(0, n * n).Select(i => 4.0 * i)]));
        Assert.Equal(Enumerable.Range(0, n).Select(i => (i + 1) / 2.0), pass.Current.Mean);
        Assert.Equal(Enumerable.Range(0, n * n).Select(i => 3.0 * i), pass.Current.Covariance);
        Assert.Throws<ArgumentException>(() => pass.MeanWith(new GaussianState([], ["c"], [1], [4])));
    }, iter: 20, threads: 1);

    /// <summary>a·b or a·bᵀ, row by row.</summary>
    private static double[] Times(double[] a, double[] b, int n, bool turned) =>
        [.. Enumerable.Range(0, n * n).Select(at => Enumerable.Range(0, n).Sum(k => a[(at / n * n) + k] * b[turned ? (at % n * n) + k : (k * n) + (at % n)]))];

    private static ForwardPass Filter(Book book) => Filter(book, out _);

    private static ForwardPass Filter(Book book, out double logEvidence)
    {
        var n = book.D + book.M;
        var covariance = new double[n * n];
        for (var i = 0; i < n; i++) covariance[i * (n + 1)] = Math.Pow(i < book.D ? book.StartSd[i] : book.ConstantSd[i - book.D], 2);
        var pass = new ForwardPass(new GaussianState(
            [.. Enumerable.Range(0, book.D).Select(i => $"x{i}")], [.. Enumerable.Range(0, book.M).Select(j => $"c{j}")],
            [.. book.StartMean, .. book.ConstantMean], covariance));
        logEvidence = 0;
        for (var t = 0; t < book.Steps; t++)
        {
            if (t > 0)
            {
                var move = book.Moves[t - 1];
                pass.Move(move.A, move.B, move.Offset, move.Sd);
            }

            foreach (var r in book.Readings.Where(r => r.Terms.Max(x => x.Step) == t))
            {
                logEvidence += r.Interval ? pass.ObserveInterval(r.Terms, r.Offset, r.Low, r.High, r.Sd) : pass.ObserveGaussian(r.Terms, r.Offset, r.Sd);
            }
        }

        return pass;
    }

    private static double Gap(GaussianState a, GaussianState b)
    {
        var n = a.Size;
        var worst = 0.0;
        for (var i = 0; i < n; i++)
        {
            var sd = Math.Sqrt(a.Covariance[i * (n + 1)]);
            worst = Math.Max(worst, Math.Abs(a.Mean[i] - b.Mean[i]) / sd);
            for (var j = 0; j < n; j++)
            {
                worst = Math.Max(worst, Math.Abs(a.Covariance[(i * n) + j] - b.Covariance[(i * n) + j]) / (sd * Math.Sqrt(a.Covariance[j * (n + 1)])));
            }
        }

        return worst;
    }
}
