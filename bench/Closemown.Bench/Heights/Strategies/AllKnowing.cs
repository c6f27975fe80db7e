namespace Closemown.Bench.Heights.Strategies;

/// <summary>Knows every screw and where it stands, and needs no gauge: what is left is hands and nuts. No one can do better.</summary>
internal sealed class AllKnowing(BenchUnit unit) : IHeightStrategy
{
    private const int MostTurns = 20;

    public void Set(HeightWork bench, double wantedMm)
    {
        for (var i = 0; i < MostTurns && unit.WorstOffMm(wantedMm) > Setting.TolMm; i++)
        {
            var (left, right) = unit.TurnsTo(wantedMm);
            bench.Turn(left, right);
            bench.Tighten();
        }
    }
}
