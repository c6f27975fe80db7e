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
}
