namespace Closemown.Estimation.Tests;

public sealed class DrawsTests
{
    private static readonly GaussianState Correlated = new(["x", "y"], ["c"], [1, -2, 30], [4, 1.2, 0.5, 1.2, 1, -0.3, 0.5, -0.3, 9]);

    [Fact]
    public void Pairs_lie_opposite_and_the_mean_is_exact()
    {
        var draws = Draws.From(Correlated, 200, 7);
        for (var s = 0; s < 200; s += 2)
        {
            for (var i = 0; i < 3; i++) Assert.Equal(2 * Correlated.Mean[i], draws[s][i] + draws[s + 1][i], 1e-12);
        }
    }

    /// <summary>Law of large numbers: 40,000 draws, entries within five standard errors.</summary>
    [Fact]
    public void Covariance_is_that_of_the_gaussian()
    {
        const int count = 40_000;
        var draws = Draws.From(Correlated, count, 11);
        for (var i = 0; i < 3; i++)
        {
            for (var j = 0; j < 3; j++)
            {
                var sum = 0.0;
                for (var s = 0; s < count; s++) sum += (draws[s][i] - Correlated.Mean[i]) * (draws[s][j] - Correlated.Mean[j]);
                double vi = Correlated.Covariance[i * 4], vj = Correlated.Covariance[j * 4], c = Correlated.Covariance[(i * 3) + j];
                Assert.InRange(Math.Abs((sum / count) - c), 0, 5 * Math.Sqrt(((vi * vj) + (c * c)) / (count / 2)));
            }
        }
    }

    [Fact]
    public void The_seed_decides()
    {
        Assert.Equal(Correlated.Sample(10, 3), Draws.From(Correlated, 10, 3).Values);
        Assert.NotEqual(Correlated.Sample(10, 3), Correlated.Sample(10, 4));
    }

    [Fact]
    public void A_semi_definite_covariance_is_drawn_from()
    {
        var flat = new GaussianState(["x", "y", "z"], [], [0, 0, 5], [1, 2, 0, 2, 4, 0, 0, 0, 0]);
        var draws = Draws.From(flat, 50, 1);
        for (var s = 0; s < 50; s++)
        {
            Assert.Equal(2 * draws[s][0], draws[s][1], 1e-12);
            Assert.Equal(5, draws[s][2]);
        }
    }

    [Fact]
    public void What_is_no_covariance_is_refused()
    {
        var wrong = new GaussianState(["x", "gap"], [], [0, 0], [1, 2, 2, 1]);
        var error = Assert.Throws<EstimationException>(() => Draws.From(wrong, 2, 1));
        Assert.StartsWith("state 'gap' has a negative variance given the others", error.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => Draws.From(Correlated, 3, 1));
    }

    /// <summary>By hand: of 0.7, 0.2, 0.07, 0.03 those no more probable than 0.07 sum to 0.10; 1 − 0.99³ = 0.029701; two-sided 1.96 is 0.05.</summary>
    [Fact]
    public void Surprises()
    {
        Assert.Equal(0.10, Surprise.OfCategory([0.7, 0.2, 0.07, 0.03], 2), 1e-15);
        Assert.Equal(1, Surprise.OfCategory([0.7, 0.2, 0.07, 0.03], 0), 1e-15);
        Assert.Equal(0.029701, Surprise.OfSeveral([0.5, 0.01, 0.2]), 1e-15);
        Assert.Equal(0.05, Surprise.OfNumber(10, 4, 10 - (2 * 1.959963984540054)), 1e-14);
        Assert.Equal(1, Surprise.OfNumber(10, 4, 10), 1e-15);
    }
}
