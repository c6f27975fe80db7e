namespace Closemown.Bench.Workshop.Strategies;

/// <summary>A strategy that goes to the bench only before every so manieth mowing.</summary>
internal sealed class Every(int mowings, IStrategy strategy) : IStrategy
{
    private int done;

    public void Work(BenchWork bench)
    {
        if (done++ % mowings == 0) strategy.Work(bench);
    }
}
