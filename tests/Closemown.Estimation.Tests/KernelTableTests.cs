using System.Text.Json;

namespace Closemown.Estimation.Tests;

/// <summary>Checks/kernel/kernel.json: mpmath at 120 digits from the definitions. [computed from published formula]</summary>
public sealed class KernelTableTests(ITestOutputHelper output)
{
    private static readonly JsonElement Table = CheckFile.Read("kernel/kernel.json");

    [Fact]
    public void Interval_rows()
    {
        double worstF = 0, worst1 = 0, worst2 = 0, worst2Far = 0;
        var rows = 0;
        foreach (var row in Table.GetProperty("interval").EnumerateArray())
        {
            double a = row.Number("a", double.NegativeInfinity), b = row.Number("b", double.PositiveInfinity);
            IntervalLikelihood.Evaluate(a, b, out var f, out var f1, out var f2);
            var near = Within(a, 100) && Within(b, 100);
            var e = Close($"f({a}, {b})", row.Number("f"), f, 1e-12, cancels: false);
            worstF = Math.Max(worstF, e);
            worst1 = Math.Max(worst1, Close($"f1({a}, {b})", row.Number("f1"), f1, 1e-12, cancels: a < 0 && b > 0));
            e = Close($"f2({a}, {b})", row.Number("f2"), f2, near ? 1e-10 : 1e-6, cancels: a < 0 && b > 0);
            if (near) worst2 = Math.Max(worst2, e);
            else worst2Far = Math.Max(worst2Far, e);
            rows++;
        }

        output.WriteLine($"interval rows {rows}: largest relative gap f {worstF:e1}, f1 {worst1:e1}, f2 near {worst2:e1}, f2 far {worst2Far:e1}");
        Assert.Equal(54, rows);
    }

    [Fact]
    public void Truncated_normal_rows()
    {
        double worstMean = 0, worstSd = 0;
        var rows = 0;
        foreach (var row in Table.GetProperty("truncatedNormal").EnumerateArray())
        {
            double a = row.Number("a"), b = row.Number("b");
            var (mean, sd) = TruncatedNormal.Moments(row.Number("mu"), row.Number("sigma"), a, b);
            worstMean = Math.Max(worstMean, Close($"mean [{a}, {b}]", row.Number("mean"), mean, 1e-12, cancels: false));
            worstSd = Math.Max(worstSd, Close($"sd [{a}, {b}]", row.Number("sd"), sd, 1e-10, cancels: false));
            rows++;
        }

        output.WriteLine($"truncated normal rows {rows}: largest relative gap mean {worstMean:e1}, sd {worstSd:e1}");
        Assert.Equal(8, rows);
    }

    [Fact]
    public void Inverse_gaussian_rows()
    {
        double worst = 0;
        var rows = 0;
        foreach (var row in Table.GetProperty("inverseGaussianPoint").EnumerateArray())
        {
            double mu = row.Number("mu"), shape = row.Number("lambda"), x = row.Number("x");
            worst = Math.Max(worst, Close($"pdf {x}", row.Number("pdf"), InverseGaussian.Density(mu, shape, x), 1e-12, cancels: false));
            worst = Math.Max(worst, Close($"cdf {x}", row.Number("cdf"), InverseGaussian.Distribution(mu, shape, x), 1e-12, cancels: false));
            rows++;
        }

        foreach (var row in Table.GetProperty("inverseGaussianQuantile").EnumerateArray())
        {
            double mu = row.Number("mu"), shape = row.Number("lambda"), p = row.Number("p");
            worst = Math.Max(worst, Close($"quantile {p}", row.Number("quantile"), InverseGaussian.Quantile(mu, shape, p), 1e-12, cancels: false));
            rows++;
        }

        output.WriteLine($"inverse Gaussian rows {rows}: largest relative gap {worst:e1}");
        Assert.Equal(10, rows);
    }

    private static bool Within(double limit, double most) => double.IsInfinity(limit) || Math.Abs(limit) <= most;

    /// <summary>Relative gap, after asserting it; where two large terms cancel and the value is below 1e-2, 1e-14 absolute will do.</summary>
    private static double Close(string what, double expected, double actual, double relative, bool cancels)
    {
        var gap = Math.Abs(actual - expected);
        var allowed = cancels && Math.Abs(expected) < 1e-2 ? Math.Max(1e-14, relative * Math.Abs(expected)) : relative * Math.Abs(expected);
        Assert.True(gap <= allowed, $"{what}: expected {expected:R}, was {actual:R}, gap {gap:e2} over {allowed:e2}");
        return expected == 0 || (cancels && Math.Abs(expected) < 1e-2) ? 0 : gap / Math.Abs(expected);
    }
}
