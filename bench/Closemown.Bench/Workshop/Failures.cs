using System.Globalization;
using Closemown.Bench.Workshop.Strategies;
using Closemown.Entries;

namespace Closemown.Bench.Workshop;

/// <summary>Every mowing out of tolerance of many seasons in a line, with what was said of it, and counts of what they have in common.</summary>
internal sealed class Failures : ISeasonWatch
{
    private const int After = 3;
    private readonly List<Failure> found = [];
    private CuttingUnit? unit;
    private int lastHit = -1000;

    private sealed record Failure(int Seed, int Mowing, bool Pressing, int Station, double Truth, double Mean, double Sd, double Minutes, int SinceHit, double Strayed);

    /// <summary>Arguments: those of the workshop.</summary>
    public static int Print(string[] args)
    {
        var o = new Options(args);
        var (set, seeds, mowings, c) = (o.Settings, o.Seeds(8), o.Whole("--mowings", 16), o.Circumstances());
        var who = Roster.Of(set, Roster.Closemown)[0];
        var watches = seeds.Select(_ => new Failures()).ToArray();
        Seasons.Live(1, seeds, o.Jobs, (_, seed) => Season.Of(seed, c, mowings, who.Make, set, watches[seed - seeds[0]]));
        var all = watches.SelectMany(w => w.found).ToArray();
        foreach (var f in all)
        {
            Line($"unit {f.Seed} mowing {f.Mowing,2} {(f.Pressing ? "presses" : "open   ")} {Stations.All[f.Station],-6} truth {f.Truth,4:0} said {f.Mean,4:0} ± {f.Sd:0.0} ({f.Strayed:+0.0;-0.0} sd), {f.Minutes,4:0.0} min{(f.SinceHit <= After ? $", {f.SinceHit} after a hit" : "")}");
        }
        Line($"{all.Length} of {seeds.Length * mowings} mowings out of tolerance; on the pressing side {all.Count(f => f.Pressing)}, in the centre {all.Count(f => f.Station == 1)}, up to {After} mowings after a hit {all.Count(f => f.SinceHit <= After)}");
        Line($"no minute at the bench {all.Count(f => f.Minutes < 1)}, more than two spreads from what was said {all.Count(f => Math.Abs(f.Strayed) > 2)}");
        Line($"mowing 1: {all.Count(f => f.Mowing == 1)}, 2–5: {all.Count(f => f.Mowing is > 1 and <= 5)}, 6–15: {all.Count(f => f.Mowing is > 5 and <= 15)}, later: {all.Count(f => f.Mowing > 15)}");
        return 0;
    }

    public void Begins(CuttingUnit unit, BenchWork bench, IStrategy strategy) => this.unit = unit;

    public void BeforeMowing(int mowing, double minutes, IReadOnlyList<Said> said)
    {
        if (Loss.InTolerance(unit!)) return;
        var worst = Enumerable.Range(0, 3).MaxBy(s => Math.Max(Loss.LowUm - unit!.Gap(s), unit!.Gap(s) - Loss.HighUm));
        var told = said.First(s => s.What == "clearance" && s.At == worst);
        found.Add(new(unit!.Make.Seed, mowing, told.Truth < Loss.LowUm, worst, told.Truth, told.Mean, told.Sd, minutes, mowing - lastHit, (told.Truth - told.Mean) / told.Sd));
    }

    public void AfterMowing(Outing outing)
    {
        if (outing.Strike is not null) lastHit = unit!.Outings;
    }

    private static void Line(FormattableString line) => Console.WriteLine(line.ToString(CultureInfo.InvariantCulture));
}
