using MathNet.Numerics.LinearAlgebra;

namespace Closemown.Estimation.Tests;

/// <summary>Checks/posterior/linear-2x6.json: Gaussian conditioning at 50 digits, Rasmussen and Williams 2006, eq. A.6. [computed from published formula]</summary>
public sealed class LinearExactTests(ITestOutputHelper output)
{
    [Fact]
    public void Means_covariances_and_evidence_are_exact()
    {
        var file = CheckFile.Read("posterior/linear-2x6.json");
        var spec = file.GetProperty("spec");
        var chain = new ChainModel(["gap", "edge"], ["click", "opening"]);
        var identity = Matrix<double>.Build.DenseIdentity(2);
        var none = Matrix<double>.Build.Dense(2, 2);
        var extra = 0.0;
        chain.AddStep();

        // Full noise: rows of the inverse Cholesky root of Q make independent unit Gaussians; log |root| is owed to the evidence.
        void Add(int step, Matrix<double> now, Matrix<double> before, Matrix<double> constants, double[] offset, Matrix<double> covariance)
        {
            var root = covariance.Cholesky().Factor.Inverse();
            extra += Math.Log(root.Determinant());
            Matrix<double> n = root * now, b = root * before, c = root * constants;
            var o = root * Vector<double>.Build.Dense(offset);
            for (var i = 0; i < 2; i++)
            {
                List<Term> terms = [];
                for (var k = 0; k < 2; k++)
                {
                    if (n[i, k] != 0) terms.Add(Term.State(step, k, n[i, k]));
                    if (b[i, k] != 0) terms.Add(Term.State(step - 1, k, b[i, k]));
                    if (c[i, k] != 0) terms.Add(Term.Constant(k, c[i, k]));
                }

                chain.AddGaussian([.. terms], o[i], 1);
            }
        }

        var q = Matrix<double>.Build.DenseOfRowArrays(spec.Table("Q"));
        var a = Matrix<double>.Build.DenseOfRowArrays(spec.Table("A"));
        Add(0, identity, none, none, spec.Numbers("initialMean"), Matrix<double>.Build.DenseOfRowArrays(spec.Table("initialCov")));
        for (var j = 0; j < 2; j++) chain.AddGaussian([Term.Constant(j, 1)], spec.Numbers("constantMean")[j], spec.Numbers("constantSd")[j]);
        foreach (var b in spec.GetProperty("B").EnumerateArray())
        {
            Add(chain.AddStep(), identity, -a, -Matrix<double>.Build.DenseOfRowArrays([.. b.EnumerateArray().Select(r => r.Numbers())]), [0, 0], q);
        }

        foreach (var r in spec.GetProperty("readings").EnumerateArray())
        {
            List<Term> terms = [];
            for (var k = 0; k < 2; k++)
            {
                terms.Add(Term.State(r.GetProperty("step").GetInt32(), k, r.Numbers("state")[k]));
                terms.Add(Term.Constant(k, r.Numbers("constant")[k]));
            }

            chain.AddGaussian([.. terms], r.Number("value"), r.Number("sd"));
        }

        var p = Solver.Solve(chain);
        Assert.Equal(EstimateKind.Gaussian, p.Kind);
        Assert.True(p.Settled);
        var mean = file.Numbers("mean");
        var covariance = file.Table("covariance");
        var means = Book.Means(p);
        double worstMean = 0, worstCovariance = 0;
        for (var i = 0; i < mean.Length; i++) worstMean = Math.Max(worstMean, Math.Abs(means[i] - mean[i]) / Math.Abs(mean[i]));
        void Compare(double value, int i, int j) => worstCovariance =
            Math.Max(worstCovariance, Math.Abs(value - covariance[i][j]) / Math.Sqrt(covariance[i][i] * covariance[j][j]));
        for (var t = 0; t < 7; t++)
        {
            for (var i = 0; i < 4; i++)
            {
                int s = i / 2, k = i % 2;
                Compare(p.StateCovariance(t, s, k), (2 * t) + s, (2 * t) + k);
                Compare(p.StateConstantCovariance(t, s, k), (2 * t) + s, 14 + k);
                if (t < 6) Compare(p.NeighbourCovariance(t, s, k), (2 * t) + s, (2 * t) + 2 + k);
                Compare(p.ConstantCovariance(s, k), 14 + s, 14 + k);
            }
        }

        var evidence = Math.Abs(p.LogEvidence + extra - file.Number("logEvidence"));
        output.WriteLine($"linear-2x6: mean {worstMean:e1} relative, covariance {worstCovariance:e1}, evidence {evidence:e1}");
        Assert.True(worstMean < 1e-9, $"mean off by {worstMean}");
        Assert.True(worstCovariance < 1e-8, $"covariance off by {worstCovariance}");
        Assert.True(evidence < 1e-9, $"evidence off by {evidence}");
    }
}
