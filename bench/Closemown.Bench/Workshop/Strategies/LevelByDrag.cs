namespace Closemown.Bench.Workshop.Strategies;

/// <summary>Where the strip does not cut: levels both ends by drag, then laps and comes in a click together until it does.</summary>
internal sealed class LevelByDrag : IStrategy
{
    private const int MostRounds = 8;

    public void Work(BenchWork bench)
    {
        if (bench.PaperCuts()) return;
        for (var turn = 0; turn < MostRounds; turn++)
        {
            var words = Hand.Words("paper-drag");
            var (left, right) = (Array.IndexOf(words, bench.Read("paper-drag", 0)), Array.IndexOf(words, bench.Read("paper-drag", 2)));
            if (left == right) break;
            bench.Turn(left > right ? 1 : 0, right > left ? 1 : 0);
        }
        for (var round = 0; round < MostRounds; round++)
        {
            bench.Turn(1, 1);
            bench.Lap(2);
            if (bench.PaperCuts()) return;
        }
    }
}
