namespace Closemown.Estimation.Tests;

/// <summary>A solution in a used workspace takes new memory for its posterior only: none by Newton step, by sweep or by step of the chain on the way.</summary>
public sealed class AllocationTests
{
    [Fact]
    public void More_sweeps_take_no_more_memory()
    {
        var (space, chain) = (new Workspace(), ShearModel.Of(240).Build());
        SolveOptions few = new() { SweepTolerance = 1e-3 }, many = new() { SweepTolerance = 1e-10 };
        Solver.SolveIn(space, chain, many);
        var (short1, sweeps) = Allocated(space, chain, few);
        var (long1, more) = Allocated(space, chain, many);
        Assert.True(more > sweeps + 3, $"{more} sweeps and {sweeps}");
        Assert.Equal(short1, long1);
    }

    [Fact]
    public void Double_the_chain_takes_double_the_memory_of_the_answer_and_no_more()
    {
        var bytes = new List<long>();
        foreach (var steps in (int[])[60, 120, 240])
        {
            var (space, chain) = (new Workspace(), ShearModel.Of(240).Build(steps));
            Solver.SolveIn(space, chain);
            bytes.Add(Allocated(space, chain, new()).Bytes);
        }

        // Five rows of a step (two states of five, six constants), its means, and three numbers a reading.
        var numbers = 120 * ((5 * 16) + 5 + (3 * 520 / 240.0));
        Assert.InRange(bytes[2] - bytes[1], 0.95 * 8 * numbers, 1.05 * 8 * numbers);
        Assert.InRange(bytes[1] - bytes[0], 0.95 * 4 * numbers, 1.05 * 4 * numbers);
    }

    private static (long Bytes, int Sweeps) Allocated(Workspace space, ChainModel chain, SolveOptions options)
    {
        var before = GC.GetAllocatedBytesForCurrentThread();
        var p = Solver.SolveIn(space, chain, options);
        return (GC.GetAllocatedBytesForCurrentThread() - before, p.Sweeps);
    }
}
