using Closemown.Bench.Heights;
using Closemown.Bench.Workshop;
using Closemown.Turf;

namespace Closemown.Bench.Green;

/// <summary>Seasons of a green under each strategy, side by side.</summary>
internal static class GreenRun
{
    private const int Days = 200, ReportFrom = 5000;

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
        var words = o.Word("--strategy")?.Split(',');
        var who = GreenRoster.Of(traces, horizon, Losses(o))
            .Where(w => words is null || words.Any(x => w.Title.Contains(x, StringComparison.Ordinal))).ToList();
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

    private static void Show(GreenWorlds world, int[] seeds, int days, Options o, GreenContender who)
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

    private static void Lived(GreenWorlds world, int count, int first, int days, Options o, List<GreenContender> who)
    {
        Console.WriteLine($"{world.Title}: {count} seasons of {days} days from {first}, cost in mowings, ± one standard error");
        Console.WriteLine("a simulator of our own with invented greens, no field trial");
        Console.WriteLine();
        var all = who.Select(_ => new GreenSeason[count]).ToArray();
        HeightsRun.Each(who.Count * count, o.Jobs, i =>
        {
            var (season, w) = Math.DivRem(i, who.Count);
            all[w][season] = GreenSeason.Of(world.Of(first + season, days, o.Has("--wide")), days, who[w].Make);
        });
        GreenTable.Print([.. who.Zip(all)]);
    }

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
}
