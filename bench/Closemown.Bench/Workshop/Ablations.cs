using Closemown.Advice;
using Closemown.Bench.Workshop.Strategies;
using Closemown.Entries;
using Closemown.Steel;

namespace Closemown.Bench.Workshop;

/// <summary>Closemown with one of its parts taken out at a time: what each is good for.</summary>
internal static class Ablations
{
    private const double KnownShare = 0.02;              // of the usual spread: as good as known
    private static readonly (string Name, Prior Start)[] Constants =
    [
        ("openingUmPerHour", SteelDefaults.OpeningUmPerHour), ("openingUmPerOuting", SteelDefaults.OpeningUmPerOuting), ("dullingUmPerHour", SteelDefaults.DullingUmPerHour),
        ("lapUmPerMinute", SteelDefaults.LapUmPerMinute), ("touchUm", SteelDefaults.TouchUm), ("paperOffsetUm", SteelDefaults.PaperOffsetUm),
        ("lostMotionUm", SteelDefaults.LostMotionUm), ("clickUm", SteelDefaults.ClickUm),
    ];

    private static readonly GuidedManner Known = new() { Priors = [.. Constants.Select(c => (c.Name, c.Start.Mean, c.Start.Sd * KnownShare))] };

    private static readonly (string Name, string Title, Ablation Without, GuidedManner Manner)[] Variants =
    [
        ("full", "full", Ablation.None, new()),
        ("contact", "without contact", Ablation.Contact, new()),
        ("learning", "without learning constants", Ablation.None, Known),
        ("checks", "with fixed checks", Ablation.None, new() { FixedChecks = true }),
        ("spread", "deciding on the mean", Ablation.Spread, new()),
        ("surprise", "without surprise", Ablation.Surprise, new()),
        ("laps", "without laps", Ablation.Laps, new()),
        ("strip", "without the strip last", Ablation.StripLast, new()),
        ("scatter", "without learned scatter", Ablation.Scatter, new()),
    ];

    /// <summary>Arguments: those of the workshop, and --variant NAME,… (all).</summary>
    public static int Print(string[] args)
    {
        var o = new Options(args);
        var (seeds, mowings, c, set) = (o.Seeds(8), o.Whole("--mowings", 16), o.Circumstances(), o.Settings);
        var wanted = o.Word("--variant")?.Split(',');
        var variants = Variants.Where(v => wanted is null || v.Name == "full" || wanted.Contains(v.Name)).ToArray();
        Console.WriteLine($"{seeds.Length} units, {mowings} mowings of {Table.Number(c.Hours)} h each, ± one standard error over units");
        Console.WriteLine();
        var seasons = Seasons.Live(variants.Length, seeds, o.Jobs, (v, seed) =>
            Season.Of(seed, c, mowings, u => new Guided(set with { Without = variants[v].Without }, u.Make.Own, variants[v].Manner), set));
        (string, Season[])[] rows = [.. variants.Select((v, i) => (v.Title, seasons[i]))];
        Table.Print(rows);
        Table.PrintAgainst("full", seasons[0], rows[1..]);
        Coverage.PrintShort(rows);
        return 0;
    }
}
