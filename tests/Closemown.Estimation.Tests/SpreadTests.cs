namespace Closemown.Estimation.Tests;

/// <summary>Spreads given for one solution: the same as a model built with them.</summary>
public sealed class SpreadTests
{
    public static TheoryData<EstimateKind> Kinds => [EstimateKind.Laplace, EstimateKind.ExpectationPropagation];

    private static readonly Book Whole = Book.Random(3, 2, 12, 41, intervals: 0.7);

    /// <summary>Every third interval left out, one by one and together.</summary>
    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_muted_interval_was_never_read(EstimateKind kind)
    {
        var all = Whole.All().ToArray();
        var intervals = Enumerable.Range(0, all.Length).Where(k => all[k].Interval).ToArray();
        Assert.True(intervals.Length > 6);
        int[][] sets = [[intervals[0]], [intervals[^1]], [.. intervals.Where((_, i) => i % 3 == 0)], intervals];
        foreach (var muted in sets)
        {
            var p = Solver.Solve(Whole.Chain(), new() { Method = kind, SpreadOf = muted.ToDictionary(k => k, _ => double.PositiveInfinity) });
            var q = Solver.Solve(Whole.Chain(Whole.Steps, all.Where((_, k) => !muted.Contains(k))), new() { Method = kind });
            Assert.Equal(muted.Length == intervals.Length ? EstimateKind.Gaussian : kind, p.Kind);
            Same(q, p);
        }
    }

    /// <summary>Two links loosened (as after an unwritten knock) and an interval sharpened: also the evidence is that of such a model.</summary>
    [Theory]
    [MemberData(nameof(Kinds))]
    public void Given_spreads_are_those_of_a_model_built_with_them(EstimateKind kind)
    {
        var all = Whole.All().ToArray();
        var sharp = Array.FindIndex(all, f => f.Interval);
        var given = new Dictionary<int, double> { [Whole.D + Whole.M] = 4, [Whole.D + Whole.M + 7] = 2.5, [sharp] = 0.05 };
        var p = Solver.Solve(Whole.Chain(), new() { Method = kind, SpreadOf = given });
        var q = Solver.Solve(Whole.Chain(Whole.Steps, all.Select((f, k) => given.TryGetValue(k, out var sd) ? f with { Sd = sd } : f)), new() { Method = kind });
        Same(q, p);
        Assert.NotEqual(Solver.Solve(Whole.Chain(), new() { Method = kind }).LogEvidence, p.LogEvidence, 0.01);
    }

    /// <summary>Group 0 keeps its spread by a factor of one, 1 doubles it, 2 takes a third, 3 lies beyond the list; a spread of its own counts before its group's.</summary>
    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_groups_spread_is_that_of_a_model_built_with_it(EstimateKind kind)
    {
        double[] scale = [1, 2, 1.0 / 3];
        var all = Whole.All().ToArray();
        var own = Array.FindLastIndex(all, f => f.Interval);
        var chain = Grouped(k => k % 4, (f, _) => f.Sd);
        var expected = Grouped(_ => 0, (f, k) => k == own ? 0.7 : f.Interval && k % 4 < 3 ? f.Sd * scale[k % 4] : f.Sd);
        var p = Solver.Solve(chain, new() { Method = kind, SpreadByGroup = scale, SpreadOf = new Dictionary<int, double> { [own] = 0.7 } });
        Same(Solver.Solve(expected, new() { Method = kind }), p);
        Same(Solver.Solve(Whole.Chain(), new() { Method = kind }), Solver.Solve(chain, new() { Method = kind, SpreadByGroup = [] }));

        ChainModel Grouped(Func<int, int> group, Func<Book.Reading, int, double> sd)
        {
            var model = Whole.Chain(Whole.Steps, []);
            for (var k = 0; k < all.Length; k++)
            {
                var f = all[k];
                if (f.Interval) model.AddInterval(f.Terms, f.Offset, f.Low, f.High, sd(f, k), group(k));
                else model.AddGaussian(f.Terms, f.Offset, sd(f, k));
            }

            return model;
        }
    }

    /// <summary>A workspace used for other spreads before forgets them.</summary>
    [Fact]
    public void Spreads_hold_for_one_solution_only()
    {
        var (w, chain) = (new Workspace(), Whole.Chain());
        var before = Solver.SolveIn(w, chain);
        var all = Whole.All().ToArray();
        Solver.SolveIn(w, chain, new() { SpreadOf = new Dictionary<int, double> { [Array.FindIndex(all, f => f.Interval)] = double.PositiveInfinity } });
        Solver.SolveIn(w, chain, new() { SpreadByGroup = [3] });
        var after = Solver.SolveIn(w, chain);
        Assert.Equal(before.LogEvidence, after.LogEvidence);
        Assert.Equal(Book.Means(before), Book.Means(after));
    }

    [Fact]
    public void Spreads_out_of_range_are_refused()
    {
        var chain = Whole.Chain();
        var interval = Array.FindIndex(Whole.All().ToArray(), f => f.Interval);
        foreach (var (k, sd) in new[] { (0, double.PositiveInfinity), (0, 0.0), (interval, -1.0), (interval, double.NaN), (-1, 1.0), (chain.FactorCount, 1.0), (interval, 1e-200) })
        {
            Assert.Throws<ArgumentOutOfRangeException>(() => Solver.Solve(chain, new() { SpreadOf = new Dictionary<int, double> { [k] = sd } }));
        }

        foreach (var bad in new[] { 0, -1, double.NaN, double.PositiveInfinity })
        {
            Assert.Throws<ArgumentOutOfRangeException>(() => Solver.Solve(chain, new() { SpreadByGroup = [bad] }));
        }

        Assert.Throws<ArgumentOutOfRangeException>(() => chain.AddInterval([Term.Constant(0, 1)], 0, 0, 1, 1, -1));
    }

    private static void Same(Posterior expected, Posterior actual)
    {
        Assert.Equal(expected.Kind, actual.Kind);
        Assert.Equal(expected.LogEvidence, actual.LogEvidence, 1e-12 * Math.Max(1, Math.Abs(expected.LogEvidence)));
        double[] sd = Book.Sds(expected), mean = Book.Means(expected), sdNow = Book.Sds(actual), meanNow = Book.Means(actual);
        for (var i = 0; i < sd.Length; i++)
        {
            Assert.Equal(0, (meanNow[i] - mean[i]) / sd[i], 1e-12);
            Assert.Equal(1, sdNow[i] / sd[i], 1e-12);
        }
    }
}
