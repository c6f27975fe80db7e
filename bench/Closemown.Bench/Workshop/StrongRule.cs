namespace Closemown.Bench.Workshop;

/// <summary>
/// The strong rule of thumb: paper at three stations; if all cut, mow; else feel each end twice, one click in where both times nothing, one out
/// where either is heavy, until neither; paper again; if it still does not cut, lap two minutes and feel again.
/// </summary>
internal static class StrongRule
{
    private const int MostRounds = 8;
    private const int MostTurns = 20;

    public static double Work(CuttingUnit unit)
    {
        var minutes = 0.0;
        for (var round = 0; round < MostRounds; round++)
        {
            minutes += 1.5;
            if (Enumerable.Range(0, 3).All(s => unit.Read("paper-cut", s) == "cuts")) break;
            if (round > 0)
            {
                unit.Lap(2);
                minutes += 10;
            }
            for (var turn = 0; turn < MostTurns; turn++)
            {
                var clicks = new int[2];
                for (var side = 0; side < 2; side++)
                {
                    string[] felt = [unit.Read("contact", side * 2), unit.Read("contact", side * 2)];
                    clicks[side] = felt.Contains("heavy") ? -1 : felt.All(f => f == "none") ? 1 : 0;
                }
                minutes += 1.2;
                if (clicks is [0, 0]) break;
                for (var side = 0; side < 2; side++) unit.Turn(side, clicks[side]);
                minutes += 0.5 + (0.3 * (Math.Abs(clicks[0]) + Math.Abs(clicks[1])));
            }
        }
        return minutes;
    }
}
