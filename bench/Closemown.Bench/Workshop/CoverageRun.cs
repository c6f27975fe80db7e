using Closemown.Bench.Workshop.Strategies;

namespace Closemown.Bench.Workshop;

/// <summary>How often the intervals of 90 % held, of clearance, usable gap and edge, in each of the worlds.</summary>
internal static class CoverageRun
{
    private static readonly string[] Whats = ["clearance", "usable gap", "edge"];

    /// <summary>Arguments: those of the workshop; without --world all of them, one after the other.</summary>
    public static int Print(string[] args)
    {
        var o = new Options(args);
        var (seeds, mowings, set, c) = (o.Seeds(8), o.Whole("--mowings", 16), o.Settings, o.Circumstances());
        var only = o.Word("--world");
        var worlds = Worlds.All.Where(w => only is null || w.Name == only).ToArray();
        Circumstances[] lived = [.. worlds.Select(w => only is null ? Worlds.In(w.Name, c) : c)];
        Console.WriteLine($"{seeds.Length} units from seed {seeds[0]}, {mowings} mowings of {Table.Number(c.Hours)} h each, Closemown; ± one standard error over units");
        Console.WriteLine();
        var seasons = Seasons.Live(worlds.Length, seeds, o.Jobs, (w, seed) => Season.Of(seed, lived[w], mowings, u => new Guided(set, u.Make.Own), set));
        for (var w = 0; w < worlds.Length; w++)
        {
            Console.WriteLine(worlds[w].Title);
            Coverage.Print(seasons[w], Whats);
        }
        return 0;
    }
}
