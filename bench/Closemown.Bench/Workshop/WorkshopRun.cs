using System.Globalization;
using Closemown.Bench.Workshop.Strategies;

namespace Closemown.Bench.Workshop;

/// <summary>Units of the workshop under each strategy, side by side; the main comparison.</summary>
internal static class WorkshopRun
{
    public static int Print(string[] args)
    {
        var o = new Options(args);
        var (seeds, mowings, c, set) = (o.Seeds(8), o.Whole("--mowings", 16), o.Circumstances(), o.Settings);
        var who = Roster.Of(set, o.Word("--strategy"));
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{seeds.Length} units ({seeds.Count(s => UnitMake.Of(s, c).Own)} own after a rebuild), {mowings} mowings of {c.Hours} h each, ± one standard error over units"));
        Console.WriteLine("a simulator of our own with invented units, no field trial");
        Console.WriteLine();
        var seasons = Seasons.Live(who.Count, seeds, o.Jobs, (w, seed) => Season.Of(seed, c, mowings, who[w].Make, set));
        (string, Season[])[] rows = [.. who.Select((w, i) => (w.Title, seasons[i]))];
        Table.Print(rows);
        Manners.Print([.. rows.Where((_, i) => who[i].Name is Roster.Strong or Roster.StrongOnce or Roster.Closemown)]);
        PrintLongest(rows, seeds);
        var strong = who.ToList().FindIndex(w => w.Name == Roster.Strong);
        if (strong >= 0) Table.PrintAgainst("the strong rule", seasons[strong], [.. rows.Where((_, i) => i != strong)]);
        for (var i = 0; i < who.Count; i++)
        {
            if (who[i].Name == Roster.Closemown) Coverage.Print(seasons[i]);
        }
        return 0;
    }

    /// <summary>The units that took most minutes: one that is ground or taken apart weighs as much as a season of the others.</summary>
    private static void PrintLongest((string Title, Season[] Seasons)[] rows, int[] seeds)
    {
        const int Shown = 4;
        foreach (var (title, seasons) in rows)
        {
            var longest = seasons.Zip(seeds, (s, seed) => (seed, Minutes: s.Mowings.Average(m => m.Sitting.Minutes))).OrderByDescending(u => u.Minutes).Take(Shown);
            Console.WriteLine($"longest, {title}: {string.Join(", ", longest.Select(u => string.Create(CultureInfo.InvariantCulture, $"unit {u.seed} {u.Minutes:0.0} min")))}");
        }
        Console.WriteLine();
    }
}
