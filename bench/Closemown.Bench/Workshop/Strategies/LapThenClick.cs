namespace Closemown.Bench.Workshop.Strategies;

/// <summary>Where the strip does not cut: laps two minutes, then both sides a click at a time until it does.</summary>
internal sealed class LapThenClick : IStrategy
{
    private const int MostRounds = 8;

    public void Work(BenchWork bench)
    {
        if (bench.PaperCuts()) return;
        bench.Lap(2);
        for (var round = 0; round < MostRounds && !bench.PaperCuts(); round++) bench.Turn(1, 1);
    }
}
