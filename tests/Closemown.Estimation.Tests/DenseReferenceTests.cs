using CsCheck;

namespace Closemown.Estimation.Tests;

/// <summary>Random small books against dense algebra by Math.NET Numerics.</summary>
public sealed class DenseReferenceTests(ITestOutputHelper output)
{
    private static readonly Gen<(int, int, int, int)> Shapes = Gen.Select(Gen.Int[1, 4], Gen.Int[0, 3], Gen.Int[1, 7], Gen.Int[0, 1_000_000]);

    [Theory]
    [InlineData(0.0)]
    [InlineData(0.7)]
    public void Every_marginal_meets_the_dense_one(double intervals)
    {
        double worstMean = 0, worstCovariance = 0, worstEvidence = 0;
        var notJudged = 0;
        Shapes.Sample((d, m, steps, seed) =>
        {
            var book = Book.Random(d, m, steps, seed, intervals);
            var p = Solver.Solve(book.Chain(), new() { Method = EstimateKind.Laplace });
            Assert.True(p.Settled, p.Remark);
            if (DenseReference.TryLaplace(book) is not { } dense)
            {
                notJudged++;
                return;
            }
            double Sd(int i) => Math.Sqrt(dense.Covariance[i, i]);
            var mean = Book.Means(p);
            for (var i = 0; i < book.Size; i++) worstMean = Math.Max(worstMean, Math.Abs(mean[i] - dense.Mean[i]) / Sd(i));
            void Compare(double value, int i, int j) =>
                worstCovariance = Math.Max(worstCovariance, Math.Abs(value - dense.Covariance[i, j]) / (Sd(i) * Sd(j)));
            for (var t = 0; t < steps; t++)
            {
                for (var i = 0; i < d; i++)
                {
                    for (var j = 0; j < d; j++) Compare(p.StateCovariance(t, i, j), (t * d) + i, (t * d) + j);
                    for (var j = 0; j < d && t + 1 < steps; j++) Compare(p.NeighbourCovariance(t, i, j), (t * d) + i, ((t + 1) * d) + j);
                    for (var j = 0; j < m; j++) Compare(p.StateConstantCovariance(t, i, j), (t * d) + i, (steps * d) + j);
                }
            }

            for (var i = 0; i < m; i++)
            {
                for (var j = 0; j < m; j++) Compare(p.ConstantCovariance(i, j), (steps * d) + i, (steps * d) + j);
            }

            worstEvidence = Math.Max(worstEvidence, Math.Abs(p.LogEvidence - dense.LogEvidence));
        }, iter: 150, threads: 1);
        output.WriteLine($"dense, intervals {intervals}: mean {worstMean:e1} sd, covariance {worstCovariance:e1}, evidence {worstEvidence:e1}");
        Assert.InRange(notJudged, 0, 15);                   // the plain formulas reach nearly every book
        Assert.True(worstMean < 1e-8, $"a mean is off by {worstMean} sd");
        Assert.True(worstCovariance < 1e-8, $"a covariance is off by {worstCovariance}");
        Assert.True(worstEvidence < 1e-8, $"an evidence is off by {worstEvidence}");
    }

    [Fact]
    public void A_prediction_over_neighbours_and_constants_is_the_dense_one() =>
        Gen.Select(Gen.Int[1, 3], Gen.Int[1, 3], Gen.Int[2, 5], Gen.Int[0, 1_000_000]).Sample((d, m, steps, seed) =>
        {
            var book = Book.Random(d, m, steps, seed);
            if (DenseReference.TryLaplace(book) is not { } dense) return;
            var p = Solver.Solve(book.Chain(), new() { Method = EstimateKind.Laplace });
            Term[] terms = [Term.Constant(m - 1, 0.7), Term.State(steps - 1, d - 1, 1.5), Term.State(steps - 2, 0, -2), Term.State(steps - 1, d - 1, 0.5)];
            var a = MathNet.Numerics.LinearAlgebra.Vector<double>.Build.Dense(book.Size);
            foreach (var t in terms) a[book.Position(t)] += t.Weight;
            var (mean, variance) = p.Predict(terms, 3);
            var expected = a * dense.Covariance * a;
            Assert.InRange(Math.Abs(mean - ((a * dense.Mean) - 3)) / Math.Sqrt(expected), 0, 1e-8);
            Assert.InRange(Math.Abs(variance - expected) / expected, 0, 1e-8);
        }, iter: 60, threads: 1);
}
