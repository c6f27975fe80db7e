using Closemown.Advice;
using Closemown.Bench.Workshop.Strategies;

namespace Closemown.Bench.Workshop;

/// <summary>How one mowing went.</summary>
/// <param name="InTolerance">All three stations within the band before it.</param>
/// <param name="Clean">Share of leaf cut clean.</param>
/// <param name="PressedUm">How deep the closest station pressed before it.</param>
/// <param name="TiltUm">How far left and right stood apart before it.</param>
/// <param name="Minutes">Minutes of the person's time for it.</param>
/// <param name="Sat">Whether there was a sitting at the bench before it.</param>
/// <param name="SteelUm">Steel taken off knife and reel.</param>
/// <param name="LapMinutes">Minutes lapped.</param>
/// <param name="Loss">All of it in minutes.</param>
/// <param name="Sitting">What the sitting before it was made of.</param>
/// <param name="CutBefore">Whether the strip would have cut at all places before the sitting, but for the hand's error.</param>
/// <param name="GapUm">Clearance before it, the mean of the stations.</param>
/// <param name="EdgeUm">Bluntness before it, the mean of the stations.</param>
internal readonly record struct Mowing(bool InTolerance, double Clean, double PressedUm, double TiltUm, double Minutes, bool Sat, double SteelUm, double LapMinutes, double Loss, SittingCount Sitting, bool CutBefore, double GapUm, double EdgeUm);

/// <summary>A season of one unit under one strategy.</summary>
internal sealed record Season(int Seed, IReadOnlyList<Mowing> Mowings, IReadOnlyList<Said> Said)
{
    /// <summary>Before each mowing the strategy works on the unit; then it mows.</summary>
    /// <param name="seed">The unit and its season.</param>
    /// <param name="c">What it is lived under.</param>
    /// <param name="mowings">How many.</param>
    /// <param name="make">The strategy.</param>
    /// <param name="set">Prices for the loss.</param>
    /// <param name="watch">Told before each mowing, and once more after the last look.</param>
    public static Season Of(int seed, Circumstances c, int mowings, Func<CuttingUnit, IStrategy> make, AdviceSettings set, ISeasonWatch? watch = null) =>
        Of(UnitMake.Of(seed, c), c, mowings, make, set, watch);

    /// <summary>The same, of a unit made beforehand.</summary>
    public static Season Of(UnitMake made, Circumstances c, int mowings, Func<CuttingUnit, IStrategy> make, AdviceSettings set, ISeasonWatch? watch = null)
    {
        var unit = new CuttingUnit(made, c.Hours);
        var hand = new Hand(unit, c);
        var bench = new BenchWork(unit, hand);
        var strategy = make(unit);
        var done = new List<Mowing>();
        var said = new List<Said>();
        watch?.Begins(unit, bench, strategy);
        for (var k = 1; k <= mowings; k++)
        {
            var (steel, lapped) = (unit.SteelUm, unit.LapMinutes);
            bench.NewSitting();
            var cut = hand.PaperWouldCut();
            strategy.Work(bench);
            Said[] now = strategy is Guided guided ? [.. Workshop.Said.Before(k, unit, guided.Book.Steel())] : [];
            said.AddRange(now);
            var (inTolerance, pressed, tilt, sat) = (Loss.InTolerance(unit), Loss.PressedUm(unit), Math.Abs(unit.Gap(0) - unit.Gap(2)), bench.Opened);
            var (gap, edge) = ((unit.Gap(0) + unit.Gap(1) + unit.Gap(2)) / 3, (unit.Edge(0) + unit.Edge(1) + unit.Edge(2)) / 3);
            watch?.BeforeMowing(k, bench.Minutes, now);
            var outing = unit.Mow();
            strategy.Mown(bench, outing.Strike is { Seen: true } ? outing.Strike : null);
            watch?.AfterMowing(outing);
            var used = unit.SteelUm - steel;
            var loss = Loss.Of(set, outing.Clean, inTolerance ? 0 : 1, pressed, c.Hours) + Loss.Steel(set, used) + (set.PriceOfMinute * bench.Minutes) + bench.Count.Paid;
            done.Add(new(inTolerance, outing.Clean, pressed, tilt, bench.Minutes, sat, used, unit.LapMinutes - lapped, loss, bench.Count, cut, gap, edge));
        }
        return new(made.Seed, done, said);
    }
}

/// <summary>Looks on while a season is lived.</summary>
internal interface ISeasonWatch
{
    void Begins(CuttingUnit unit, BenchWork bench, IStrategy strategy);

    void BeforeMowing(int mowing, double minutes, IReadOnlyList<Said> said);

    void AfterMowing(Outing outing);
}
