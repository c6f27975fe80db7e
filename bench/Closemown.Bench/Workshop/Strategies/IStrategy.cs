namespace Closemown.Bench.Workshop.Strategies;

/// <summary>A way of looking after a unit.</summary>
internal interface IStrategy
{
    /// <summary>Works at the bench before a mowing, until it would mow; where it can meet a limit before, it tells the bench when it says mow.</summary>
    void Work(BenchWork bench);

    /// <summary>Hears how the mowing went, by what a person can see.</summary>
    /// <param name="bench">To look at the swath.</param>
    /// <param name="heard">What was hit, where the person noticed.</param>
    void Mown(BenchWork bench, Strike? heard)
    {
    }
}
