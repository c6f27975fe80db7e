using Closemown.Bench.Heights;
using Closemown.Bench.Workshop;
using Closemown.Turf;

namespace Closemown.Bench.Green;

/// <summary>Seasons of a green under each strategy, side by side.</summary>
internal static class GreenRun
{
    private const int Days = 200, ReportFrom = 5000;

    private static readonly (string Head, Func<GreenSeason, double> Of, string Form)[] Columns =
    [
        ("cost", s => s.Cost, "0.0"), ("of it share", s => s.ShareCost, "0.0"), ("band", s => s.BandCost, "0.0"), ("stress", s => s.StressCost, "0.0"),
        ("days near, %", s => 100.0 * s.DaysNear / s.Days, "0"), ("mowings", s => s.Mowings, "0.0"), ("over a third", s => s.OverThird, "0.00"), ("over half", s => s.OverHalf, "0.00"),
        ("scalps", s => s.Scalps, "0.00"), ("changes", s => s.Changes, "0.0"), ("minutes", s => s.Minutes, "0"), ("limits broken", s => s.BrokenLimits, "0.00"),
    ];

    /// <summary>
    /// Options: --seasons N, --first SEED, --days N, --traces N, --horizon N, --strategy WORD,… (parts of titles), --jobs N;
    /// --world own, other or both; --scalp-guard, --above-wish, --stressed-share: prices the planner plans by;
    /// --wide: growth rates that lie further apart; --reads: how often the turf is read on a free day, 0 to 1;
    /// --show N: no table, but the first N seasons under the first strategy week by week, to look at.
    /// </summary>
    public static int Print(string[] args)
    {
        var o = new Options(args);
        var (count, first, days) = (o.Whole("--seasons", 48), o.Whole("--first", ReportFrom), o.Whole("--days", Days));
        var (traces, horizon) = (o.Whole("--traces", 60), o.Whole("--horizon", 14));
        var who = Roster(traces, horizon, Losses(o)).Where(w => o.Word("--strategy") is not { } word || word.Split(',').Any(x => w.Title.Contains(x, StringComparison.Ordinal))).ToList();
        var worlds = GreenWorlds.Named(o.Word("--world") ?? "own");
        GreenSeason.ReadBefore = o.Number("--reads", GreenSeason.ReadBefore);
        if (o.Has("--show"))
        {
            foreach (var world in worlds) Show(world, [.. Enumerable.Range(first, count)], days, o, who[0]);
            return 0;
        }
        foreach (var world in worlds) Lived(world, count, first, days, o, who);
        return 0;
    }

    private static void Show(GreenWorlds world, int[] seeds, int days, Options o, (string Title, Func<GreenTruth, IGreenStrategy> Make) who)
    {
        Console.WriteLine($"{world.Title}, {who.Title}");
        var all = new List<List<TraceDay>>();
        foreach (var seed in seeds)
        {
            var trace = new List<TraceDay>();
            GreenSeason.Of(world.Of(seed, days, o.Has("--wide")), days, who.Make, trace);
            if (all.Count < o.Whole("--show", 1)) GreenTrace.Print(trace);
            all.Add(trace);
        }
        GreenTrace.Summary(all);
    }

    private static void Lived(GreenWorlds world, int count, int first, int days, Options o, List<(string Title, Func<GreenTruth, IGreenStrategy> Make)> who)
    {
        Console.WriteLine($"{world.Title}: {count} seasons of {days} days from {first}, cost in mowings, ± one standard error over seasons");
        Console.WriteLine("a simulator of our own with invented greens, no field trial");
        Console.WriteLine();
        var all = who.Select(_ => new GreenSeason[count]).ToArray();
        HeightsRun.Each(who.Count * count, o.Jobs, i =>
        {
            var (season, w) = Math.DivRem(i, who.Count);
            all[w][season] = GreenSeason.Of(world.Of(first + season, days, o.Has("--wide")), days, who[w].Make);
        });
        var lines = new List<string[]> { ([.. Columns.Select(c => c.Head).Prepend("a season"), "scalped seasons", "late, days"]) };
        for (var w = 0; w < who.Count; w++)
        {
            var s = all[w];
            double[] late = [.. s.Where(x => x.Late is not null).Select(x => (double)x.Late!.Value)];
            lines.Add([who[w].Title, .. Columns.Select((c, i) => i == 0 ? OverUnits.Mean([.. s.Select(c.Of)]).Text(c.Form) : Table.Number(s.Average(c.Of), c.Form)),
                Table.Number(s.Count(x => x.Scalps > 0)), late.Length == 0 ? "–" : Table.Number(late.Average(), "0")]);
        }
        Table.Write(lines);
        Ratios(who, all);
        for (var w = 0; w < who.Count; w++)
        {
            if (all[w].Sum(s => s.Said) is var said and > 0)
                Console.WriteLine($"{who[w].Title}: standing height within what was said with 90 in 100: {Table.Number(all[w].Sum(s => s.SaidIn) / (double)said, "0.000")} of {said}; off by {Table.Number(all[w].Sum(s => s.OffSum) / said, "0.00")} mm on average, {Table.Number(Math.Sqrt(all[w].Sum(s => s.OffSquares) / said), "0.00")} root mean square; growth rate off after 4 and 10 weeks: {Table.Number(all[w].Average(s => s.RateOff4 ?? 1), "0.00")}, {Table.Number(all[w].Average(s => s.RateOff10 ?? 1), "0.00")}");
        }
    }

    private static void Ratios(List<(string Title, Func<GreenTruth, IGreenStrategy> Make)> who, GreenSeason[][] all)
    {
        double[] Cost(int w) => [.. all[w].Select(s => s.Cost)];
        var others = Enumerable.Range(0, who.Count).ToList();
        var lines = new List<string[]> { (string[])["cost against (paired)", .. who.Where(w => Ours(w.Title)).Select(w => w.Title)] };
        foreach (var b in others)
        {
            lines.Add([who[b].Title, .. others.Where(w => Ours(who[w].Title)).Select(w => OverUnits.Ratio(Cost(w), Cost(b)).Text("0.000"))]);
        }
        Table.Write(lines);
    }

    private static bool Ours(string title) => title.StartsWith("planner", StringComparison.Ordinal) || title == "Closemown";

    /// <summary>The planner's own prices, to try others; a season is counted by the usual ones whatever it plans by.</summary>
    private static PlanLosses Losses(Options o)
    {
        var usual = new PlanLosses();
        return usual with
        {
            ScalpGuard = o.Number("--scalp-guard", usual.ScalpGuard),
            AboveWish = o.Number("--above-wish", usual.AboveWish),
            StressedShare = o.Number("--stressed-share", usual.StressedShare),
        };
    }

    private static List<(string Title, Func<GreenTruth, IGreenStrategy> Make)> Roster(int traces, int horizon, PlanLosses losses)
    {
        List<(string, Func<GreenTruth, IGreenStrategy>)> list = [];
        static double Start(GreenTruth t) => t.World.Make.StepsDown ? 6 : 5;
        foreach (var rule in (HeightRule[])[HeightRule.Never, HeightRule.Thirds, HeightRule.Slowly])
        {
            var name = rule switch { HeightRule.Never => "never raised", HeightRule.Thirds => "raised, down by thirds", _ => "raised, down slowly" };
            list.Add(($"calendar, {name}", t => new CalendarRule(rule, Start(t))));
            foreach (var over in (double[])[0.15, 0.2, 0.25, 0.3, 0.35, 0.4]) list.Add(($"threshold {Table.Number(over)}, {name}", t => new ThresholdRule(over, rule, Start(t))));
            list.Add(($"every free day, {name}", t => new EveryFreeDay(rule, Start(t))));
            list.Add(($"one ahead, {name}", t => new OneAhead(rule, Start(t))));
        }
        foreach (var (name, green, there) in ((string, bool, bool)[])[("planner", false, false), ("planner, told the days", false, true), ("planner, told the green", true, false), ("planner, told everything", true, true)])
            list.Add((name, t => new PlannedGreen(t, green, there, Start(t), traces, horizon, losses)));
        list.Add(("Closemown", _ => new ClosemownGreen()));
        return list;
    }
}
