namespace Closemown.Estimation.Tests;

/// <summary>A chain rolled back and replayed is the chain built afresh.</summary>
public sealed class MarkTests
{
    [Fact]
    public void Going_back_and_adding_again_gives_the_same_bits()
    {
        var book = Book.Random(2, 2, 200, 8, intervals: 0.6);
        var fresh = Solver.Solve(InOrder(book));
        var chain = new ChainModel(["x0", "x1"], ["c0", "c1"]);
        var other = Book.Random(2, 2, 90, 9, intervals: 0.6);
        var empty = chain.Mark();
        Grow(chain, other, 0, 90);
        chain.BackTo(empty);
        Assert.Equal((0, 0), (chain.StepCount, chain.FactorCount));
        Grow(chain, book, 0, 70);
        var mark = chain.Mark();
        Grow(chain, other, 70, 90);
        chain.BackTo(mark);
        chain.BackTo(mark);
        Grow(chain, book, 70, 200);
        var again = Solver.Solve(chain);
        Assert.Equal(fresh.LogEvidence, again.LogEvidence);
        Assert.Equal(Book.Means(fresh), Book.Means(again));
        Assert.Equal(Book.Sds(fresh), Book.Sds(again));
    }

    [Fact]
    public void Without_its_intervals_a_chain_is_Gaussian_again()
    {
        var chain = new ChainModel([], ["c"]);
        chain.AddGaussian([Term.Constant(0, 1)], 0, 1);
        var mark = chain.Mark();
        chain.AddInterval([Term.Constant(0, 1)], 0, 0, 1, 1);
        Assert.Equal(EstimateKind.ExpectationPropagation, Solver.Solve(chain).Kind);
        chain.BackTo(mark);
        Assert.Equal(EstimateKind.Gaussian, Solver.Solve(chain).Kind);
    }

    [Fact]
    public void A_mark_ahead_of_the_chain_is_refused()
    {
        var chain = new ChainModel(["x"], []);
        var empty = chain.Mark();
        chain.AddStep();
        var ahead = chain.Mark();
        chain.BackTo(empty);
        Assert.Throws<ArgumentException>(() => chain.BackTo(ahead));
        Assert.Equal(0, chain.StepCount);
    }

    private static ChainModel InOrder(Book book)
    {
        var chain = new ChainModel(["x0", "x1"], ["c0", "c1"]);
        Grow(chain, book, 0, book.Steps);
        return chain;
    }

    /// <summary>Steps from one up to another, each with its factors.</summary>
    private static void Grow(ChainModel chain, Book book, int from, int to)
    {
        var factors = book.All().ToLookup(f => f.Terms.Max(t => t.Step));
        if (from == 0)
        {
            foreach (var f in factors[-1]) Book.Add(chain, f);
        }

        for (var t = from; t < to; t++)
        {
            chain.AddStep();
            foreach (var f in factors[t]) Book.Add(chain, f);
        }
    }
}
