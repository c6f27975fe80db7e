using Closemown.Estimation;

namespace Closemown.Bench.Workshop;

/// <summary>How one mowing went.</summary>
/// <param name="InTolerance">All three stations from −6 to 35 µm before it.</param>
/// <param name="Clean">Share of leaf cut clean.</param>
/// <param name="PressedUm">How deep the closest station pressed.</param>
/// <param name="Minutes">Minutes at the bench before it.</param>
internal readonly record struct Mowing(bool InTolerance, double Clean, double PressedUm, double Minutes);

/// <summary>A season of one unit under one strategy.</summary>
internal sealed record Season(IReadOnlyList<Mowing> Mowings, double LappedMinutes)
{
    /// <summary>Before each mowing the strategy works on the unit and says how many minutes that took; then it mows.</summary>
    public static Season Of(CuttingUnit unit, int mowings, Func<CuttingUnit, double> atTheBench, Action<CuttingUnit> mown)
    {
        var done = new List<Mowing>();
        for (var k = 0; k < mowings; k++)
        {
            var minutes = atTheBench(unit);
            var gaps = Enumerable.Range(0, 3).Select(unit.Gap).ToArray();
            var clean = Enumerable.Range(0, 3).Average(s => NormalMath.Phi((40 - gaps[s] - unit.Edge(s)) / 8));
            done.Add(new(gaps.Min() >= -6 && gaps.Max() <= 35, clean, Math.Max(0, -gaps.Min()), minutes));
            unit.Mow();
            mown(unit);
        }
        return new(done, unit.Lapped);
    }
}
