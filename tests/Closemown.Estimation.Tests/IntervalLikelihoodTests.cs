using CsCheck;

namespace Closemown.Estimation.Tests;

public sealed class IntervalLikelihoodTests
{
    private static readonly Gen<(double A, double B)> Limits = Gen.Select(Gen.Double[-30, 30], Gen.Double[-4, 1.5], Gen.Int[0, 3])
        .Select((a, width, open) => open switch
        {
            0 => (double.NegativeInfinity, a),
            1 => (a, double.PositiveInfinity),
            _ => (a, a + Math.Pow(10, width)),
        });

    /// <summary>Derivatives by definition: central differences of the value and of the first derivative.</summary>
    [Fact]
    public void Derivatives_are_those_of_the_value() => Limits.Sample(l =>
    {
        const double h = 1e-4;
        IntervalLikelihood.Evaluate(l.A, l.B, out _, out var f1, out var f2);
        IntervalLikelihood.Evaluate(l.A - h, l.B - h, out var up, out var up1, out _);
        IntervalLikelihood.Evaluate(l.A + h, l.B + h, out var down, out var down1, out _);
        Assert.InRange(Math.Abs(((up - down) / (2 * h)) - f1), 0, 1e-6 * (1 + Math.Abs(f1)));
        Assert.InRange(Math.Abs(((up1 - down1) / (2 * h)) - f2), 0, 1e-6);
    }, iter: 3000, threads: 1);

    [Fact]
    public void Curvature_lies_within_minus_one_and_zero_and_the_mirror_agrees() =>
        Gen.Select(Gen.Double[-1e4, 1e4], Gen.Double[-12, 4]).Sample((a, width) =>
        {
            var b = a + Math.Pow(10, width);
            IntervalLikelihood.Evaluate(a, b, out var f, out var f1, out var f2);
            Assert.True(double.IsFinite(f) && f <= 0, $"f {f}");
            Assert.True(double.IsFinite(f1) && f1 >= a - 1e-9 && f1 <= b + 1e-9, $"f1 {f1}");
            Assert.InRange(f2, -1, 0);
            IntervalLikelihood.Evaluate(-b, -a, out var g, out var g1, out var g2);
            Assert.Equal((f, -f1, f2), (g, g1, g2));
        }, iter: 5000, threads: 1);

    /// <summary>The three forms meet: values on both sides of each seam agree to the tolerance of the tables.</summary>
    [Theory]
    [InlineData(0.0, 3.0)]
    [InlineData(0.0, 4.898979485566356)]
    [InlineData(2.0, 5.291502622129181)]
    [InlineData(4.0, 6.324555320336759)]
    [InlineData(20.0, 20.59126028197400)]
    [InlineData(8.0, 9.380831519646859)]
    [InlineData(-1.0, 2.0)]
    public void Forms_meet_at_their_seams(double a, double b)
    {
        var step = 1e-9 * b;
        IntervalLikelihood.Evaluate(a, b - step, out var f, out var f1, out var f2);
        IntervalLikelihood.Evaluate(a, b + step, out var g, out var g1, out var g2);
        var z = Math.Exp(NormalMath.LogDensity(b) - f) * 2 * step;
        Assert.InRange(Math.Abs(g - f - z), 0, 1e-12);
        Assert.InRange(Math.Abs(g1 - f1), 0, (z * (b - f1)) + 1e-12);
        Assert.InRange(Math.Abs(g2 - f2), 0, (z * (b - f1) * (b - f1)) + 1e-11);
    }

    /// <summary>Percentage points as every table of the normal has them. [from memory]</summary>
    [Theory]
    [InlineData(0.025, 1.959963984540054)]
    [InlineData(0.0001, 3.71901648545568)]
    public void Known_quantiles(double upper, double x)
    {
        Assert.Equal(x, -NormalMath.InversePhi(upper), 2e-14);
        Assert.Equal(upper, NormalMath.UpperTail(x), 1e-16);
    }

    [Fact]
    public void Quantile_and_distribution_undo_each_other() => Gen.Double[-37, 8].Sample(x =>
    {
        var p = NormalMath.Phi(x);
        var back = NormalMath.InversePhi(p);
        Assert.InRange(Math.Abs(back - x), 0, x < 0 ? 1e-14 * (1 + Math.Abs(x)) : 4e-16 / NormalMath.Density(x) + 1e-14);
        Assert.InRange(Math.Abs(NormalMath.LogPhi(x) - Math.Log(p)), 0, 1e-12);
    }, iter: 3000, threads: 1);

    [Theory]
    [InlineData(1, 1)]
    [InlineData(2, 1)]
    [InlineData(double.NaN, 1)]
    public void Limits_out_of_order_are_refused(double a, double b)
    {
        var error = Assert.Throws<ArgumentException>(() => IntervalLikelihood.Evaluate(a, b, out _, out _, out _));
        Assert.StartsWith($"The low limit must be below the high one, but they are {a} and {b}.", error.Message, StringComparison.Ordinal);
    }
}
