using Closemown.Advice;
using Closemown.Bench.Workshop.Strategies;

namespace Closemown.Bench.Workshop;

/// <summary>A season on a home green: short outings twice a week, and a sitting at the bench only where it is called for.</summary>
internal static class HomeSeason
{
    private const double OutingHours = 0.2;
    private const int Outings = 52;
    private const double Torn = 0.5;

    /// <summary>Who goes to the bench when; one who means to look before every mowing opens the sitting, whatever is done in it.</summary>
    private static (string Title, bool AlwaysOpens, Func<CuttingUnit, IStrategy> Make)[] Ways(AdviceSettings set) =>
    [
        ("Closemown, bench when it says so", false, u => new Guided(set, u.Make.Own, new() { AtBench = false })),
        ("Closemown, bench every time", true, u => new Guided(set, u.Make.Own)),
        ("strong rule every time", true, _ => new StrongRule()),
        ("strong rule once a week", false, _ => new Every(2, new StrongRule())),
        ("strong rule once in four weeks", false, _ => new Every(8, new StrongRule())),
    ];

    /// <summary>Arguments: those of the workshop.</summary>
    public static int Print(string[] args)
    {
        var o = new Options(args);
        var (seeds, mowings, c, set) = (o.Seeds(8), o.Whole("--mowings", Outings), o.Circumstances(OutingHours), o.Settings);
        var ways = Ways(set);
        Console.WriteLine($"{seeds.Length} units, {mowings} outings of {Table.Number(c.Hours)} h, two a week; {Table.Number(set.OpenSittingMinutes)} minutes for opening a sitting; ± one standard error over units");
        Console.WriteLine();
        var seasons = Seasons.Live(ways.Length, seeds, o.Jobs, (w, seed) => Season.Of(seed, c, mowings, ways[w].Make, set));
        var lines = new List<string[]> { (string[])["a season", "sittings", "minutes", "torn mowings", "cut clean", "out of tolerance", "lapped, min", "steel, µm", "all in minutes"] };
        for (var w = 0; w < ways.Length; w++)
        {
            var (of, always) = (seasons[w], ways[w].AlwaysOpens);
            double Opening(Mowing m) => always || m.Sat ? set.OpenSittingMinutes : 0;
            lines.Add([
                ways[w].Title,
                Sum(m => always || m.Sat ? 1 : 0).Text("0.0"),
                Sum(m => m.Minutes + Opening(m)).Text("0.0"),
                Sum(m => m.Clean < Torn ? 1 : 0).Text("0.0"),
                Table.Mean(of, m => m.Clean).Text("0.000"),
                Table.Mean(of, m => m.InTolerance ? 0 : 1).Text("0.000"),
                Sum(m => m.LapMinutes).Text("0.0"),
                Sum(m => m.SteelUm).Text("0"),
                Sum(m => m.Loss + (set.PriceOfMinute * Opening(m))).Text("0")]);
            OverUnits Sum(Func<Mowing, double> value) => OverUnits.Mean([.. of.Select(s => s.Mowings.Sum(value))]);
        }
        Table.Write(lines);
        return 0;
    }
}
