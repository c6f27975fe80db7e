namespace Closemown.Bench.Workshop.Strategies;

/// <summary>Never goes to the bench.</summary>
internal sealed class Nothing : IStrategy
{
    public void Work(BenchWork bench)
    {
    }
}
