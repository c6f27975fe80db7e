namespace Closemown.Estimation.Tests;

/// <summary>Readings that share part of their error: exact with one unknown, worth less than fresh ones, and fresh where they are told apart.</summary>
public sealed class SharedErrorTests
{
    private const double Spread = 5;
    private static readonly double[] Cuts = [-1, 2];

    /// <summary>Against sums over a grid in the unknown and the shared part.</summary>
    [Theory]
    [InlineData(0.75, new[] { 1, 1 })]
    [InlineData(0.75, new[] { 2, 1, 2 })]
    [InlineData(0.3, new[] { 0, 2 })]
    [InlineData(0.9, new[] { 2, 2, 2, 2, 2, 2 })]
    public void Meets_a_grid_over_the_shared_part(double shared, int[] categories)
    {
        const double sd = 2;
        var chain = Chain(sd, shared, categories, _ => 0);
        double z = 0, first = 0, second = 0;
        double common = sd * Math.Sqrt(shared), own = sd * Math.Sqrt(1 - shared), hx = Spread / 100, hu = common / 100;
        for (var x = -9 * Spread; x < 9 * Spread; x += hx)
        {
            for (var u = -8 * common; u < 8 * common; u += hu)
            {
                var weight = hx * hu * NormalMath.Density(x / Spread) / Spread * NormalMath.Density(u / common) / common;
                foreach (var c in categories)
                    weight *= (c < 2 ? NormalMath.Phi((Cuts[c] - x - u) / own) : 1) - (c > 0 ? NormalMath.Phi((Cuts[c - 1] - x - u) / own) : 0);
                (z, first, second) = (z + weight, first + (x * weight), second + (x * x * weight));
            }
        }
        var solved = Solver.Solve(chain);
        var (mean, variance) = solved.Predict([Term.State(0, 0, 1)]);
        Assert.Equal(first / z, mean, 1e-5);
        Assert.Equal(Math.Sqrt((second / z) - (first / z * (first / z))), Math.Sqrt(variance), 1e-5);
        Assert.Equal(Math.Log(z), solved.LogEvidence, 1e-5);
    }

    [Fact]
    public void A_repeat_tells_little_a_reading_of_another_group_or_kin_as_much_as_a_fresh_one()
    {
        double Sd(double shared, int readings, Func<int, int> kin) => Math.Sqrt(Solver.Solve(Chain(1, shared, [.. Enumerable.Repeat(1, readings)], kin)).Predict([Term.State(0, 0, 1)]).Variance);
        var (one, fresh, repeated, apart) = (Sd(0.75, 1, _ => 0), Sd(0, 2, _ => 0), Sd(0.75, 2, _ => 0), Sd(0.75, 2, i => i));
        Assert.True(fresh < repeated && repeated < one);
        Assert.True(one - repeated < 0.5 * (one - fresh), $"{one}, repeated {repeated}, fresh {fresh}");
        Assert.Equal(fresh, apart, 0.02 * fresh);
        // However often, it tells no more than one reading of the shared part alone.
        Assert.True(Sd(0.75, 200, _ => 0) > Math.Sqrt(0.75), $"{Sd(0.75, 200, _ => 0)}");
    }

    [Theory]
    [InlineData(-0.1)]
    [InlineData(1.0)]
    [InlineData(double.NaN)]
    public void A_share_out_of_range_is_refused(double shared) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Chain(1, shared, [0], _ => 0));

    private static ChainModel Chain(double sd, double shared, int[] categories, Func<int, int> kin)
    {
        var chain = new ChainModel(["x"], []);
        chain.AddStep();
        chain.AddGaussian([Term.State(0, 0, 1)], 0, Spread);
        for (var i = 0; i < categories.Length; i++) chain.AddCategory([Term.State(0, 0, 1)], 0, Cuts, categories[i], sd, group: 0, shared, kin(i));
        return chain;
    }
}
