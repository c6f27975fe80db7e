namespace Closemown.Bench.Heights;

/// <summary>How one setting of the height went.</summary>
/// <param name="Number">Which of the unit's, from 1.</param>
/// <param name="Pairs">Pairs of readings taken.</param>
/// <param name="Minutes">Minutes of the person's time.</param>
/// <param name="OffLeftMm">True height less the wish, left, mm.</param>
/// <param name="OffRightMm">The same, right.</param>
internal readonly record struct Setting(int Number, int Pairs, double Minutes, double OffLeftMm, double OffRightMm)
{
    public const double TolMm = 0.05;

    public bool Within => Math.Abs(OffLeftMm) <= TolMm && Math.Abs(OffRightMm) <= TolMm;

    /// <summary>One unit's settings under one strategy, with days of mowing between them.</summary>
    public static IReadOnlyList<Setting> Of(int seed, int settings, Func<BenchUnit, IHeightStrategy> make)
    {
        var unit = new BenchUnit(ScrewMake.Of(seed));
        var bench = new HeightWork(unit);
        var strategy = make(unit);
        var done = new List<Setting>();
        foreach (var mm in Wishes.Of(seed, settings))
        {
            bench.NewSitting();
            strategy.Set(bench, mm);
            if (unit.Loose) throw new InvalidOperationException("Bug in a strategy: it leaves the nuts loose.");
            done.Add(new(done.Count + 1, bench.Pairs, bench.Minutes, unit.TrueMm(0) - mm, unit.TrueMm(1) - mm));
            unit.DaysLater();
            strategy.Mown();
        }
        return done;
    }
}
