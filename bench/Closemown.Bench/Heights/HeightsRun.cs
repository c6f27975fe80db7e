using System.Diagnostics;
using System.Globalization;
using Closemown.Bench.Heights.Strategies;
using Closemown.Bench.Workshop;

namespace Closemown.Bench.Heights;

/// <summary>Units set to one height after another under each strategy, side by side.</summary>
internal static class HeightsRun
{
    private const int MostThreads = 2;

    /// <summary>Options: --units N, --settings N, --first SEED, --probability P,… , --strategy NAME,… , --jobs N.</summary>
    public static int Print(string[] args)
    {
        var o = new Options(args);
        var (seeds, settings) = (o.Seeds(60), o.Whole("--settings", 12));
        double[] sure = [.. (o.Word("--probability") ?? "0.85").Split(',').Select(p => double.Parse(p, CultureInfo.InvariantCulture))];
        var who = HeightRoster.Of(o.Word("--strategy"), sure);
        Console.WriteLine($"{seeds.Length} units from {seeds[0]}, {settings} settings each, both sides to ± {Table.Number(Setting.TolMm)} mm, ± one standard error over units");
        Console.WriteLine("a simulator of our own with invented units, no field trial");
        Console.WriteLine();

        var all = who.Select(_ => new IReadOnlyList<Setting>[seeds.Length]).ToArray();
        var guided = who.Select(_ => new Guided?[seeds.Length]).ToArray();
        Each(who.Count * seeds.Length, o.Jobs, i =>
        {
            var (unit, w) = Math.DivRem(i, who.Count);
            all[w][unit] = Setting.Of(seeds[unit], settings, u =>
            {
                var strategy = who[w].Make(u);
                guided[w][unit] = strategy as Guided;
                return strategy;
            });
        });

        (string, IReadOnlyList<Setting>[])[] rows = [.. who.Select((c, w) => (c.Title, all[w]))];
        HeightTable.Print(rows);
        var base0 = who.ToList().FindIndex(c => c.Name == HeightRoster.Alternating);
        if (base0 >= 0) HeightTable.PrintAgainst(who[base0].Title, all[base0], [.. rows.Where((_, w) => w != base0)]);
        for (var w = 0; w < who.Count; w++)
        {
            Guided[] talked = [.. guided[w].OfType<Guided>()];
            if (talked.Length == 0) continue;
            HeightTable.PrintSaid(who[w].Title, [.. talked.Select(g => g.Said.ToArray())]);
            double[] left = [.. talked.Select(g => (double)g.Left.Count)];
            var said = OverUnits.Ratio([.. talked.Select(g => g.Left.Sum(x => x.Sure))], left);
            var came = OverUnits.Ratio([.. talked.Select(g => (double)g.Left.Count(x => x.Within))], left);
            Console.WriteLine($"{who[w].Title}: within tolerance when done, said {said.Text("0.000")}, came true {came.Text("0.000")}");
            Console.WriteLine();
        }
        return 0;
    }

    /// <summary>On at most two threads; what comes out does not depend on how many.</summary>
    public static void Each(int count, int jobs, Action<int> work)
    {
        var watch = Stopwatch.StartNew();
        Parallel.For(0, count, new ParallelOptions { MaxDegreeOfParallelism = Math.Clamp(jobs, 1, MostThreads) }, work);
        Console.Error.WriteLine($"({watch.Elapsed.TotalSeconds:0} s)");
    }
}
