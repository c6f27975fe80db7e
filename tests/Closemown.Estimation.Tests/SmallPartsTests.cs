using System.Numerics;

namespace Closemown.Estimation.Tests;

/// <summary>Small parts that the large tests pass through without leaning on them.</summary>
public sealed class SmallPartsTests
{
    [Fact]
    public void Hits_are_counted_by_the_middle_50_75_and_90_in_100()
    {
        var count = new HitCount();
        foreach (var surprise in new[] { 0.6, 0.3, 0.3, 0.12, 0.05 }) count.Add(surprise);
        Assert.Equal([(50, 5, 1), (75, 5, 3), (90, 5, 4)], count.Rows);
    }

    /// <summary>SplitMix64 from 1234567, its first four numbers as published with the generator's code (Vigna, from memory).</summary>
    /// <remarks>xoshiro256** of Blackman &amp; Vigna 2021 by its formula.</remarks>
    [Fact]
    public void Seeded_normals_are_those_of_the_published_generator()
    {
        ulong[] s = [6457827717110365317, 3203168211198807973, 9817491932198370423, 4593380528125082431];
        var normal = new SeededNormal(1234567);
        for (var n = 0; n < 4; n++)
        {
            var bits = unchecked(BitOperations.RotateLeft(s[1] * 5, 7) * 9);
            var t = s[1] << 17;
            s[2] ^= s[0];
            s[3] ^= s[1];
            s[1] ^= s[2];
            s[0] ^= s[3];
            s[2] ^= t;
            s[3] = BitOperations.RotateLeft(s[3], 45);
            Assert.Equal((bits >> 12) / (double)(1UL << 52), NormalMath.Phi(normal.Next()), 1e-13);
        }
    }

    /// <summary>Two readings of one place that share the lower limit only are two, not one read twice: against a sum over a grid.</summary>
    [Fact]
    public void Readings_that_share_one_limit_only_are_told_apart()
    {
        (double Low, double High)[] read = [(0, 1), (0, 4), (0, 4)];
        var chain = new ChainModel(["x"], []);
        chain.AddStep();
        chain.AddGaussian([Term.State(0, 0, 1)], 0, 3);
        foreach (var (low, high) in read) chain.AddInterval([Term.State(0, 0, 1)], 0, low, high, 1);
        double z = 0, first = 0;
        for (var x = -20.0; x < 20; x += 0.002)
        {
            var weight = NormalMath.Density(x / 3);
            foreach (var (low, high) in read) weight *= NormalMath.Phi(high - x) - NormalMath.Phi(low - x);
            (z, first) = (z + weight, first + (x * weight));
        }
        Assert.Equal(first / z, Solver.Solve(chain).StateMean(0, 0), 1e-6);
    }

    [Fact]
    public void What_is_asked_of_a_step_that_is_not_there_is_refused()
    {
        var chain = new ChainModel(["x"], ["c"]);
        chain.AddStep();
        chain.AddGaussian([Term.State(0, 0, 1)], 0, 3);
        chain.AddGaussian([Term.Constant(0, 1)], 0, 3);
        var solved = Solver.Solve(chain);
        Assert.Throws<ArgumentOutOfRangeException>(() => solved.StateAt(1));
        Assert.Throws<ArgumentOutOfRangeException>(() => solved.StateAt(-1));
        Assert.Throws<ArgumentOutOfRangeException>(() => solved.StateMean(1, 0));
    }

    [Fact]
    public void A_reading_beyond_what_numbers_hold_names_all_that_it_touches_with_their_steps()
    {
        var chain = new ChainModel(["clearance", "edge"], ["click"]);
        for (var t = 0; t < 3; t++)
        {
            chain.AddStep();
            for (var i = 0; i < 2; i++) chain.AddGaussian([Term.State(t, i, 1)], 0, 1);
        }
        chain.AddGaussian([Term.Constant(0, 1)], 0, 1);
        chain.AddInterval([Term.State(1, 0, 1), Term.State(2, 1, 1), Term.Constant(0, 1)], 0, 1e200, double.PositiveInfinity, 1);
        var said = Assert.Throws<EstimationException>(() => Solver.Solve(chain)).Message;
        Assert.Contains("(on state 'clearance' at step 1, state 'edge' at step 2, constant 'click')", said, StringComparison.Ordinal);
        Assert.Contains("beyond what numbers can hold: correct the entry, or widen its spread", said, StringComparison.Ordinal);
    }

    [Fact]
    public void The_tail_far_out_is_nothing()
    {
        Assert.Equal(0, ScaledErfc.Erfc(30));
        Assert.Equal(2, ScaledErfc.Erfc(-30));
        Assert.InRange(ScaledErfc.Erfc(26), double.Epsilon, 1e-290);
    }

    [Fact]
    public void A_limit_is_never_reached_before_the_start()
    {
        foreach (var x in new[] { 0, -1, double.NegativeInfinity })
        {
            Assert.Equal(0, InverseGaussian.Density(3, 2, x));
            Assert.Equal(0, InverseGaussian.Distribution(3, 2, x));
        }
        Assert.True(InverseGaussian.Density(3, 2, 1e-3) >= 0 && InverseGaussian.Distribution(3, 2, 1e-3) >= 0);
    }

    [Fact]
    public void What_is_known_exactly_is_drawn_as_it_is()
    {
        var draws = Draws.From(new GaussianState(["x", "y"], ["c"], [1, 2, 3], [4, 0, 0, 0, 0, 0, 0, 0, 9]), 6, 1);
        for (var s = 0; s < 6; s++)
        {
            Assert.Equal(2, draws[s][1]);
            Assert.True(double.IsFinite(draws[s][0]) && double.IsFinite(draws[s][2]) && draws[s][0] != 1 && draws[s][2] != 3);
        }
    }

    /// <summary>A reading of η ~ N(mean, variance) with spread sd scatters by both, whatever share of its error others have too: one alone, and two against a sum over a grid.</summary>
    [Fact]
    public void Readings_that_share_their_error_are_as_probable_as_a_grid_says()
    {
        const double Mean = 0.3, Variance = 4, Sd = 1.5, Shared = 0.4;
        var total = Math.Sqrt(Variance + (Sd * Sd));
        Assert.Equal(Math.Log(NormalMath.Phi((2 - Mean) / total) - NormalMath.Phi((-1 - Mean) / total)), new SharedError().LogProbability([(-1, 2)], Mean, Variance, Sd, Shared), 1e-6);
        (double Low, double High)[] two = [(-1, 2), (0.5, double.PositiveInfinity)];
        var (common, own, sum) = (Math.Sqrt(Variance + (Shared * Sd * Sd)), Sd * Math.Sqrt(1 - Shared), 0.0);
        for (var z = -9.0; z < 9; z += 0.001)
        {
            var (eta, both) = (Mean + (common * z), 0.001 * NormalMath.Density(z));
            foreach (var (low, high) in two) both *= NormalMath.Phi((high - eta) / own) - NormalMath.Phi((low - eta) / own);
            sum += both;
        }
        Assert.Equal(Math.Log(sum), new SharedError().LogProbability(two, Mean, Variance, Sd, Shared), 1e-5);
    }

    [Fact]
    public void A_scale_that_makes_a_reading_sharper_than_numbers_hold_is_refused()
    {
        var chain = new ChainModel(["x"], []);
        chain.AddStep();
        chain.AddGaussian([Term.State(0, 0, 1)], 0, 1);
        chain.AddInterval([Term.State(0, 0, 1)], 0, 0, 1, 1);
        var refused = Assert.Throws<ArgumentOutOfRangeException>(() => Solver.Solve(chain, new SolveOptions { SpreadByGroup = [1e-200] }));
        Assert.Contains("is beyond what numbers can hold", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_states_that_hang_together_are_named_from_their_first_step()
    {
        var chain = new ChainModel(["a", "b"], []);
        for (var t = 0; t < 3; t++)
        {
            chain.AddStep();
            chain.AddGaussian([Term.State(t, 0, 1), Term.State(t, 1, 1)], 0, 1);
            for (var i = 0; i < 2 && t > 0; i++) chain.AddGaussian([Term.State(t, i, 1), Term.State(t - 1, i, -1)], 0, 1);
        }
        var error = Assert.Throws<EstimationException>(() => Solver.Solve(chain));
        Assert.Equal(("state 'a' at step 0", "is known only together with state 'b' at step 0 (no prior or reading sees it alone)"), (error.Variable, error.Cause));
    }

    [Fact]
    public void A_constant_that_hangs_on_a_state_is_named_with_it()
    {
        var chain = new ChainModel(["a"], ["known", "offset"]);
        chain.AddGaussian([Term.Constant(0, 1)], 0, 1);
        for (var t = 0; t < 3; t++)
        {
            chain.AddStep();
            chain.AddGaussian([Term.State(t, 0, 1), Term.Constant(1, 1)], 0, 1);
            if (t > 0) chain.AddGaussian([Term.State(t, 0, 1), Term.State(t - 1, 0, -1)], 0, 1);
        }
        var error = Assert.Throws<EstimationException>(() => Solver.Solve(chain));
        Assert.Equal(("state 'a' at step 0", "is known only together with constant 'offset' (no prior or reading sees it alone)"), (error.Variable, error.Cause));
    }

    [Theory]
    [InlineData(0.1, 0.3)]
    [InlineData(0.7, 0.9)]
    [InlineData(3, 7)]
    [InlineData(0.013, 11.7)]
    public void What_rounding_leaves_of_a_direction_that_nothing_sees_is_not_taken_for_a_reading(double first, double second)
    {
        var chain = new ChainModel(["a"], ["one", "two"]);
        chain.AddStep();
        chain.AddGaussian([Term.State(0, 0, 1)], 0, 1);
        chain.AddGaussian([Term.Constant(0, first), Term.Constant(1, second)], 1, 0.3);
        chain.AddGaussian([Term.Constant(0, 2 * first), Term.Constant(1, 2 * second), Term.State(0, 0, 0.1)], 2, 0.7);
        var error = Assert.Throws<EstimationException>(() => Solver.Solve(chain));
        Assert.Equal("is known only together with constant 'two' (no prior or reading sees it alone)", error.Cause);
    }
}
