namespace Closemown.Bench.Workshop.Strategies;

/// <summary>Turns the end that folds one click in, until the strip cuts everywhere.</summary>
internal sealed class TurnUpTheFold : IStrategy
{
    private const int MostRounds = 8;

    public void Work(BenchWork bench)
    {
        for (var round = 0; round < MostRounds; round++)
        {
            var paper = bench.Read("paper-cut");
            if (paper.All(w => w == "cuts")) return;
            var (left, right) = (paper[0] == "cuts" ? 0 : 1, paper[2] == "cuts" ? 0 : 1);
            if (left + right == 0) (left, right) = (1, 1);      // only the middle folds
            bench.Turn(left, right);
        }
    }
}
