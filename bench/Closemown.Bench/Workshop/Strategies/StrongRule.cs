namespace Closemown.Bench.Workshop.Strategies;

/// <summary>
/// The strong rule of thumb: paper at three stations; if all cut, mow; else feel each end (twice), one click in where it was nothing each time, one out
/// where it was heavy, until neither; paper again; if it still does not cut, lap two minutes and feel again.
/// </summary>
/// <remarks>The strip comes last: after any turn or lap both ends are felt and then the strip is fed at three stations, whatever limit was met.</remarks>
internal sealed class StrongRule(int feels = 2) : IStrategy
{
    private const int MostRounds = 8;
    private const int MostTurns = 20;

    public void Work(BenchWork bench)
    {
        for (var round = 0; !bench.PaperCuts(); round++)
        {
            if (round == MostRounds) return;            // a limit met: no mow of its own
            if (round > 0) bench.Lap(2);
            for (var turn = 0; ; turn++)
            {
                var (left, right) = (Wanted(bench, 0), Wanted(bench, 2));
                if ((left == 0 && right == 0) || turn == MostTurns) break;
                bench.Turn(left, right);
            }
        }
        bench.SaysMow();
    }

    private int Wanted(BenchWork bench, int station)
    {
        string[] felt = [.. Enumerable.Range(0, feels).Select(_ => bench.Read("contact", station))];
        return felt.Contains("heavy") ? -1 : felt.All(f => f == "none") ? 1 : 0;
    }
}
