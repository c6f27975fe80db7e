namespace Closemown.Estimation;

/// <summary>How far a <see cref="ChainModel"/> had grown when it was taken; only of use to that model.</summary>
public readonly record struct ChainMark
{
    internal ChainMark(int steps, int factors, int intervals) => (Steps, Factors, Intervals) = (steps, factors, intervals);

    internal int Steps { get; }

    internal int Factors { get; }

    internal int Intervals { get; }
}
