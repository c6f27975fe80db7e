using MathNet.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Closemown.Estimation.Tests;

/// <summary>The same posterior by dense algebra of Math.NET Numerics and the plain formulas: slow, independent.</summary>
/// <remarks>Rasmussen and Williams 2006, eq. A.6 and 3.4; interval terms by differences of erfc, so for moderate readings only.</remarks>
internal static class DenseReference
{
    /// <summary>The plain formulas met a reading so far off that its probability underflows: this reference cannot judge that book.</summary>
    public sealed class FarTailException : Exception;

    /// <summary>The answer, or null where the plain formulas underflow.</summary>
    public static Answer? TryLaplace(Book book)
    {
        try
        {
            return Laplace(book);
        }
        catch (FarTailException)
        {
            return null;
        }
    }

    public sealed record Answer(Vector<double> Mean, Matrix<double> Covariance, double LogEvidence);

    /// <summary>Mode and inverse Hessian; exact where all factors are Gaussian.</summary>
    public static Answer Laplace(Book book)
    {
        var n = book.Size;
        var factors = book.All().ToArray();
        var rows = factors.Select(f =>
        {
            var a = Vector<double>.Build.Dense(n);
            foreach (var t in f.Terms) a[book.Position(t)] += t.Weight;
            return a;
        }).ToArray();

        // From the Gaussian factors alone, so that the plain interval formula never meets a far tail.
        var start = Enumerable.Range(0, factors.Length).Where(k => !factors[k].Interval).ToArray();
        var a = Matrix<double>.Build.DenseOfRowVectors(start.Select(k => rows[k] / factors[k].Sd));
        var u = a.TransposeThisAndMultiply(a).Cholesky().Solve(a.TransposeThisAndMultiply(Vector<double>.Build.DenseOfEnumerable(start.Select(k => factors[k].Offset / factors[k].Sd))));
        for (var round = 0; ; round++)
        {
            var h = Matrix<double>.Build.Dense(n, n);
            var g = Vector<double>.Build.Dense(n);
            var value = 0.0;
            for (var k = 0; k < factors.Length; k++)
            {
                var (f, f1, f2) = Factor(factors[k], (rows[k] * u) - factors[k].Offset);
                value += f;
                g += f1 * rows[k];
                h -= f2 * rows[k].OuterProduct(rows[k]);
            }

            if (double.IsNegativeInfinity(value)) throw new FarTailException();
            var step = h.Cholesky().Solve(g);
            if (g * step < 1e-22 || round == 200)
            {
                return new(u, h.Inverse(), value + (0.5 * n * Math.Log(2 * Math.PI)) - (0.5 * h.Cholesky().DeterminantLn));
            }

            var share = 1.0;
            while (share > 1e-8 && factors.Select((f, k) => Factor(f, (rows[k] * (u + (share * step))) - f.Offset).F).Sum() < value - (1e-12 * Math.Abs(value))) share /= 2;
            u += share * step;
        }
    }

    private static (double F, double F1, double F2) Factor(Book.Reading f, double eta)
    {
        var s = f.Sd;
        if (!f.Interval) return ((-0.5 * eta * eta / (s * s)) - Math.Log(s * Math.Sqrt(2 * Math.PI)), -eta / (s * s), -1 / (s * s));
        double a = (f.Low - eta) / s, b = (f.High - eta) / s;
        var z = a + b > 0 ? Tail(a) - Tail(b) : Tail(-b) - Tail(-a);
        if (!(z > 1e-280)) return (double.NegativeInfinity, 0, 0);
        double pa = Density(a), pb = Density(b);
        var f1 = (pa - pb) / z;
        var f2 = (((pa == 0 ? 0 : a * pa) - (pb == 0 ? 0 : b * pb)) / z) - (f1 * f1);
        return (Math.Log(z), f1 / s, f2 / (s * s));
    }

    private static double Tail(double x) => 0.5 * SpecialFunctions.Erfc(x / Math.Sqrt(2));

    private static double Density(double x) => double.IsInfinity(x) ? 0 : Math.Exp(-0.5 * x * x) / Math.Sqrt(2 * Math.PI);
}
