namespace Closemown.Estimation.Tests;

/// <summary>What is said when entries do not determine an answer, or cannot be one.</summary>
public sealed class ErrorMessageTests
{
    private static ChainModel Two()
    {
        var chain = new ChainModel(["clearance left", "edge"], ["click", "opening"]);
        for (var t = 0; t < 4; t++) chain.AddStep();
        return chain;
    }

    private static ChainModel Tied(bool start)
    {
        var chain = Two();
        for (var t = 1; t < 4; t++)
        {
            for (var i = 0; i < 2; i++) chain.AddGaussian([Term.State(t, i, 1), Term.State(t - 1, i, -1)], 0, 1);
        }

        chain.AddGaussian([Term.State(0, 1, 1)], 0, 1);
        if (start) chain.AddGaussian([Term.State(0, 0, 1)], 0, 1);
        return chain;
    }

    private static string Failure(ChainModel chain) => Assert.Throws<EstimationException>(() => Solver.Solve(chain)).Message;

    [Fact]
    public void Nothing_ties_a_state()
    {
        var chain = Two();
        for (var t = 0; t < 3; t++) chain.AddGaussian([Term.State(t, 0, 1)], 0, 1);
        for (var t = 0; t < 4; t++) chain.AddGaussian([Term.State(t, 1, 1)], 0, 1);
        Assert.Equal(
            "state 'clearance left' at step 3 is tied to nothing (no prior and no reading): add a starting value for it or a reading that sees it",
            Failure(chain));
    }

    [Fact]
    public void Nothing_ties_a_constant()
    {
        var chain = Tied(start: true);
        chain.AddGaussian([Term.Constant(0, 1)], 18, 2);
        Assert.Equal("constant 'opening' is tied to nothing (no prior and no reading): add a starting value for it or a reading that sees it", Failure(chain));
    }

    [Fact]
    public void A_chain_hangs_in_the_air()
    {
        var chain = Tied(start: false);
        for (var j = 0; j < 2; j++) chain.AddGaussian([Term.Constant(j, 1)], 1, 2);
        Assert.Equal(
            "state 'clearance left' at step 0 is tied only to its own values at other steps (no starting value and no reading): "
            + "add a starting value for it or a reading that sees it",
            Failure(chain));
    }

    [Fact]
    public void Two_constants_are_only_seen_together()
    {
        var chain = Tied(start: true);
        chain.AddGaussian([Term.Constant(0, 1), Term.Constant(1, 2)], 18, 2);
        var error = Assert.Throws<EstimationException>(() => Solver.Solve(chain));
        Assert.Equal("constant 'click'", error.Variable);
        Assert.Equal("is known only together with constant 'opening' (no prior or reading sees it alone)", error.Cause);
        Assert.Equal("add a starting value for it or a reading that sees it apart from the others", error.Cure);
        Assert.Equal($"{error.Variable} {error.Cause}: {error.Cure}", error.Message);
    }

    [Fact]
    public void A_start_is_drowned_by_links_without_noise()
    {
        var chain = new ChainModel(["bow"], []);
        for (var t = 0; t < 50; t++) chain.AddStep();
        chain.AddGaussian([Term.State(0, 0, 1)], 0, 1);
        for (var t = 1; t < 50; t++) chain.AddGaussian([Term.State(t, 0, 1), Term.State(t - 1, 0, -1)], 0, 1e-8);
        Assert.Equal(
            "state 'bow' at step 0 is held so loosely beside the sharpness of its links that it cannot be told from free: "
            + "give its links more noise (a millionth of its own spread or more), or add a reading that sees it",
            Failure(chain));
    }

    [Fact]
    public void A_reading_beyond_numbers()
    {
        var chain = Tied(start: true);
        for (var j = 0; j < 2; j++) chain.AddGaussian([Term.Constant(j, 1)], 1, 2);
        chain.AddInterval([Term.State(2, 0, 1), Term.Constant(0, 1)], 0, 1e200, double.PositiveInfinity, 1);
        Assert.Equal(
            "reading 10 (on state 'clearance left' at step 2, constant 'click') lies 1e+200 spreads from what the others say, beyond what numbers can hold: "
            + "correct the entry, or widen its spread",
            Failure(chain));
    }

    [Fact]
    public void Numbers_out_of_range_are_refused_with_their_value()
    {
        var chain = Two();
        Refused("The spread (sd) must be positive and finite, but is 0.", () => chain.AddGaussian([Term.State(0, 0, 1)], 0, 0));
        Refused("The spread (sd) must be positive and finite, but is NaN.", () => chain.AddGaussian([Term.State(0, 0, 1)], 0, double.NaN));
        Refused("A weight must be finite, but is Infinity.", () => chain.AddGaussian([Term.State(0, 0, double.PositiveInfinity)], 0, 1));
        Refused("The offset must be finite, but is NaN.", () => chain.AddGaussian([Term.State(0, 0, 1)], double.NaN, 1));
        Refused("The low limit must be below the high one, but they are 6 and 5.", () => chain.AddInterval([Term.State(0, 0, 1)], 0, 6, 5, 1));
        Refused("An interval without any limit says nothing: give a low or a high one.",
            () => chain.AddInterval([Term.State(0, 0, 1)], 0, double.NegativeInfinity, double.PositiveInfinity, 1));
        Refused("A factor needs at least one term with a weight other than zero.", () => chain.AddGaussian([Term.State(0, 0, 0)], 0, 1));
        Refused("A predictor may touch two neighbouring steps only, but touches steps 0 and 2.",
            () => chain.AddGaussian([Term.State(2, 0, 1), Term.State(0, 0, -1)], 0, 1));
        Refused("Step 4 does not exist: the steps are 0 to 3.", () => chain.AddGaussian([Term.State(4, 0, 1)], 0, 1));
        Refused("State component 2 does not exist: there are 2, from 0.", () => chain.AddGaussian([Term.State(0, 2, 1)], 0, 1));
        Refused("Constant 2 does not exist: there are 2, from 0.", () => chain.AddGaussian([Term.Constant(2, 1)], 0, 1));
        Refused("Cut-points must rise, but 5 is followed by 5.", () => chain.AddCategory([Term.State(0, 0, 1)], 0, [5.0, 5.0], 0, 1));
        Refused("The category must be 0 to 2 for 2 cut-points, but is 3.", () => chain.AddCategory([Term.State(0, 0, 1)], 0, [4.0, 5.0], 3, 1));
        Assert.Equal(0, chain.FactorCount);
    }

    [Fact]
    public void A_posterior_is_asked_within_its_shape()
    {
        var chain = Tied(start: true);
        for (var j = 0; j < 2; j++) chain.AddGaussian([Term.Constant(j, 1)], 1, 2);
        var p = Solver.Solve(chain);
        Refused("Step 4 does not exist: the steps are 0 to 3.", () => p.StateMean(4, 0));
        Refused("Step 4 does not exist: the steps are 0 to 3.", () => p.NeighbourCovariance(3, 0, 0));
        Refused("State component -1 does not exist: there are 2, from 0.", () => p.StateVariance(0, -1));
        Refused("The warm posterior has another shape (2 state components, 2 constants) than the model (1, 0).",
            () => Solver.Solve(new ChainModel(["x"], []), null, p));
    }

    private static void Refused<T>(string message, Func<T> what) =>
        Assert.StartsWith(message, Assert.ThrowsAny<ArgumentException>(() => { what(); }).Message, StringComparison.Ordinal);

    [Fact]
    public void Defaults_are_held()
    {
        var o = new SolveOptions();
        Assert.Equal((EstimateKind.ExpectationPropagation, 100, 400, 1e-10), (o.Method, o.MaxNewtonSteps, o.MaxSweeps, o.SweepTolerance));
    }
}
