namespace Closemown.Bench.Workshop.Strategies;

/// <summary>
/// The strong rule of thumb: paper at three stations; if all cut, mow; else feel each end twice, one click in where both times nothing, one out
/// where either is heavy, until neither; paper again; if it still does not cut, lap two minutes and feel again.
/// </summary>
internal sealed class StrongRule : IStrategy
{
    private const int MostRounds = 8;
    private const int MostTurns = 20;

    public void Work(BenchWork bench)
    {
        for (var round = 0; round < MostRounds; round++)
        {
            if (bench.PaperCuts()) return;
            if (round > 0) bench.Lap(2);
            for (var turn = 0; turn < MostTurns; turn++)
            {
                var (left, right) = (Wanted(bench, 0), Wanted(bench, 2));
                if (left == 0 && right == 0) break;
                bench.Turn(left, right);
            }
        }
    }

    private static int Wanted(BenchWork bench, int station)
    {
        string[] felt = [bench.Read("contact", station), bench.Read("contact", station)];
        return felt.Contains("heavy") ? -1 : felt.All(f => f == "none") ? 1 : 0;
    }
}
