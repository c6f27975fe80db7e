using CsCheck;

namespace Closemown.Estimation.Tests;

/// <summary>Laws that hold for every book, whatever its numbers.</summary>
public sealed class LawTests
{
    private static readonly Gen<(int, int, int, int)> Shapes = Gen.Select(Gen.Int[1, 4], Gen.Int[0, 3], Gen.Int[1, 12], Gen.Int[0, 1_000_000]);

    /// <summary>N(0, s²) and twice N(0, 2s²) are the same factor but for their norms: the evidence moves by log(2s√2π) for each.</summary>
    [Fact]
    public void A_gaussian_split_in_two_of_double_variance_changes_nothing() => Shapes.Sample((d, m, steps, seed) =>
    {
        var book = Book.Random(d, m, steps, seed);
        var owed = 0.0;
        List<Book.Reading> split = [];
        foreach (var f in book.All())
        {
            if (f.Interval)
            {
                split.Add(f);
                continue;
            }

            var half = f with { Sd = f.Sd * Math.Sqrt(2) };
            split.AddRange([half, half]);
            owed += Math.Log(2 * f.Sd * Math.Sqrt(2 * Math.PI));
        }

        var whole = Solver.Solve(book.Chain());
        var parted = Solver.Solve(book.Chain(steps, split));
        Same(whole, parted, 1, null, 1e-7);
        Assert.InRange(Math.Abs(whole.LogEvidence - parted.LogEvidence - owed), 0, 1e-7);
    }, iter: 60, threads: 1);

    [Fact]
    public void Shifting_the_origin_shifts_the_means_and_nothing_else() => Shapes.Sample((d, m, steps, seed) =>
    {
        var book = Book.Random(d, m, steps, seed);
        var r = new Random(seed);
        var shift = Enumerable.Range(0, book.Size).Select(_ => 200 * (r.NextDouble() - 0.5)).ToArray();
        var moved = book.All().Select(f => f with { Offset = f.Offset + f.Terms.Sum(t => t.Weight * shift[book.Position(t)]) });
        var here = Solver.Solve(book.Chain());
        var there = Solver.Solve(book.Chain(steps, moved));
        Same(here, there, 1, shift, 1e-7);
        Assert.InRange(Math.Abs(here.LogEvidence - there.LogEvidence), 0, 1e-7);
    }, iter: 60, threads: 1);

    [Fact]
    public void A_mirrored_book_gives_the_mirrored_answer() => Shapes.Sample((d, m, steps, seed) =>
    {
        var book = Book.Random(d, m, steps, seed);
        var mirrored = book.All().Select(f => f with { Offset = -f.Offset, Low = -f.High, High = -f.Low });
        var here = Solver.Solve(book.Chain());
        var there = Solver.Solve(book.Chain(steps, mirrored));
        Same(here, there, -1, null, 1e-9);
        Assert.InRange(Math.Abs(here.LogEvidence - there.LogEvidence), 0, 1e-9);
    }, iter: 60, threads: 1);

    [Fact]
    public void A_further_gaussian_reading_never_widens_anything() => Shapes.Sample((d, m, steps, seed) =>
    {
        var book = Book.Random(d, m, steps, seed, intervals: 0);
        var before = Solver.Solve(book.Chain());
        var chain = book.Chain();
        chain.AddGaussian([Term.State(steps / 2, 0, 1.3), Term.State(steps / 2, d - 1, -0.4)], 2, 0.1 + (seed % 7));
        var after = Solver.Solve(chain);
        foreach (var (a, b) in Book.Sds(after).Zip(Book.Sds(before))) Assert.True(a <= b * (1 + 1e-12), $"{a} after {b}");
        var predicted = Math.Sqrt(after.Predict([Term.State(steps / 2, 0, 1.3), Term.State(steps / 2, d - 1, -0.4)]).Variance);
        Assert.True(predicted < 0.1 + (seed % 7));
    }, iter: 60, threads: 1);

    [Fact]
    public void The_same_book_gives_the_same_bits() => Shapes.Sample((d, m, steps, seed) =>
    {
        var space = new Workspace();
        var first = Solver.Solve(Book.Random(d, m, steps, seed).Chain());
        Solver.SolveIn(space, Book.Random(4, 3, 20, 1).Chain());
        var again = Solver.SolveIn(space, Book.Random(d, m, steps, seed).Chain());
        Assert.Equal(Book.Means(first), Book.Means(again));
        Assert.Equal(Book.Sds(first), Book.Sds(again));
        Assert.Equal(first.LogEvidence, again.LogEvidence);
    }, iter: 30, threads: 1);

    [Fact]
    public void A_warm_start_agrees_with_a_cold_one() => Gen.Select(Gen.Int[1, 4], Gen.Int[0, 3], Gen.Int[2, 30], Gen.Int[0, 1_000_000]).Sample((d, m, steps, seed) =>
    {
        var book = Book.Random(d, m, steps, seed);
        var earlier = Solver.Solve(book.Until(steps - 1).Chain());
        Same(Solver.Solve(book.Chain()), Solver.Solve(book.Chain(), null, earlier), 1, null, 1e-6);
    }, iter: 60, threads: 1);

    [Fact]
    public void A_warm_start_on_the_long_shear_book_agrees_and_saves_steps()
    {
        var cold = Solver.Solve(ShearModel.Of(240).Build());
        var warm = Solver.Solve(ShearModel.Of(240).Build(), null, Solver.Solve(ShearModel.Of(240).Build(239)));
        Same(cold, warm, 1, null, 1e-6);
        Assert.True(warm.NewtonSteps < cold.NewtonSteps, $"{warm.NewtonSteps} after {cold.NewtonSteps}");
        Assert.True(warm.Sweeps < cold.Sweeps, $"{warm.Sweeps} after {cold.Sweeps}");
    }

    /// <summary>The equations of expectation propagation say so: matched means and variances, here for one reading where they are exact.</summary>
    [Fact]
    public void One_interval_on_one_unknown_gives_the_truncated_normal() => Gen.Select(Gen.Double[-8, 8], Gen.Double[0.01, 5]).Sample((low, width) =>
    {
        var chain = new ChainModel([], ["c"]);
        chain.AddGaussian([Term.Constant(0, 1)], 0, 1);
        chain.AddInterval([Term.Constant(0, 1)], 0, low, low + width, 1e-4);
        var p = Solver.Solve(chain);
        var (mean, sd) = TruncatedNormal.Moments(0, 1, low, low + width);
        Assert.True(p.Settled, p.Remark);
        Assert.InRange(Math.Abs(p.ConstantMean(0) - mean) / sd, 0, 2e-3);
        Assert.InRange(Math.Sqrt(p.ConstantVariance(0)) / sd, 0.998, 1.002);
        IntervalLikelihood.Evaluate(low, low + width, out var f, out _, out _);
        Assert.InRange(Math.Abs(p.LogEvidence - f), 0, 2e-3);
    }, iter: 100, threads: 1);

    private static void Same(Posterior a, Posterior b, double sign, double[]? shift, double tolerance)
    {
        Assert.True(a.Settled, a.Remark);
        Assert.Equal(a.Kind, b.Kind);
        double[] ma = Book.Means(a), mb = Book.Means(b), sa = Book.Sds(a), sb = Book.Sds(b);
        for (var i = 0; i < ma.Length; i++)
        {
            Assert.InRange(Math.Abs(ma[i] + (shift?[i] ?? 0) - (sign * mb[i])) / sa[i], 0, tolerance);
            Assert.InRange(Math.Abs(sb[i] / sa[i] - 1), 0, tolerance);
        }
    }
}
