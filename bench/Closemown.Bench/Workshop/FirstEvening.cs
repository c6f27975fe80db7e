using Closemown.Bench.Workshop.Strategies;

namespace Closemown.Bench.Workshop;

/// <summary>One evening at the bench as a figure of its own: how long from the question to mowing, and how it stands then.</summary>
internal static class FirstEvening
{
    private const int FirstSeed = 41_000;                // far from the seeds that anything was tuned or compared on
    private const string Contestants = $"{Roster.Closemown},{Roster.Strong},{Roster.StrongOnce}";

    private static readonly (string Head, Func<Mowing[], string> Cell)[] Columns =
    [
        ("steps", m => Cell(m, x => x.Sitting.Steps)),
        ("checks and turns, min", m => Cell(m, x => x.Sitting.CheckMinutes)),
        ("laps, min", m => Cell(m, x => x.Sitting.LapMinutes)),
        ("looks at the fit, min", m => Cell(m, x => x.Sitting.FitMinutes)),
        ("in all, min", m => Cell(m, x => x.Sitting.Minutes)),
        ("repeats", m => Cell(m, x => x.Sitting.Repeats)),
        ("in tolerance", m => Share(m, x => x.InTolerance)),
        ("cut clean", m => OverUnits.Mean([.. m.Select(x => x.Clean)]).Text("0.00")),
        ("ended by mow", m => Share(m, x => x.Sitting.Mows)),
        ("changed, no strip after", m => Share(m, x => x.Sitting.Mows && !x.Sitting.StripLast)),
    ];

    /// <summary>Arguments: --units N (16), --seed S (41000) the first of them, --start NAME,… (all), those of the workshop for the circumstances;
    /// --show prints sittings in full instead.</summary>
    public static int Print(string[] args)
    {
        var o = new Options(args);
        if (o.Has("--show")) return EveningPrinted.Print(o, o.Whole("--seed", FirstSeed));
        var (c, set, first) = (o.Circumstances(), o.Settings, o.Whole("--seed", FirstSeed));
        int[] seeds = [.. Enumerable.Range(first, o.Whole("--units", 16))];
        var starts = o.Named("--start", Start.All, s => s.Name);
        var who = Roster.Of(set, o.Word("--strategy") ?? Contestants);
        Console.WriteLine($"{seeds.Length} units from seed {first}; median; mean of the worst tenth. A simulator of our own with invented units, no field trial");
        Console.WriteLine();
        var sat = starts.Select(_ => who.Select(_ => new Mowing[seeds.Length]).ToArray()).ToArray();
        Parallel.For(0, starts.Count * who.Count * seeds.Length, new ParallelOptions { MaxDegreeOfParallelism = o.Jobs }, i =>
        {
            var (rest, unit) = Math.DivRem(i, seeds.Length);
            var (start, w) = Math.DivRem(rest, who.Count);
            sat[start][w][unit] = starts[start].Sit(seeds[unit], c, who[w], set);
        });
        for (var start = 0; start < starts.Count; start++)
        {
            var lines = new List<string[]> { ([.. Columns.Select(x => x.Head).Prepend(starts[start].Title)]) };
            for (var w = 0; w < who.Count; w++) lines.Add([who[w].Title, .. Columns.Select(x => x.Cell(sat[start][w]))]);
            Table.Write(lines);
        }
        return 0;
    }

    private static string Cell(Mowing[] sat, Func<Mowing, double> of)
    {
        double[] values = [.. sat.Select(of)];
        var worst = values.OrderDescending().Take((int)Math.Ceiling(values.Length / 10.0)).Average();
        return $"{Manners.Median(values)}; {Table.Number(worst, "0.0")}";
    }

    private static string Share(Mowing[] sat, Func<Mowing, bool> which) => OverUnits.Mean([.. sat.Select(m => which(m) ? 1.0 : 0)]).Text("0.00");
}
