using Closemown.Bench.Workshop.Strategies;

namespace Closemown.Bench.Workshop;

/// <summary>What turning the one dial does: the price of a minute, from few failures to few minutes.</summary>
internal static class Prices
{
    private static readonly double[] Points = [0.25, 0.5, 1, 2, 4];

    /// <summary>Arguments: those of the workshop.</summary>
    public static int Print(string[] args)
    {
        var o = new Options(args);
        var (seeds, mowings, c) = (o.Seeds(8), o.Whole("--mowings", 16), o.Circumstances());
        Console.WriteLine($"{seeds.Length} units, {mowings} mowings of {Table.Number(c.Hours)} h each, Closemown at prices of a minute; the last column is at price 1 for all");
        Console.WriteLine();
        var seasons = Seasons.Live(Points.Length, seeds, o.Jobs, (p, seed) =>
        {
            var set = o.Settings with { PriceOfMinute = Points[p] };
            return Season.Of(seed, c, mowings, u => new Guided(set, u.Make.Own), o.Settings with { PriceOfMinute = 1 });
        });
        Table.Print([.. Points.Select((p, i) => ($"price {Table.Number(p)}", seasons[i]))]);
        return 0;
    }
}
