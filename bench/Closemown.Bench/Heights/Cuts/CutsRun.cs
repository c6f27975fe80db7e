using Closemown.Bench.Workshop;

namespace Closemown.Bench.Heights.Cuts;

/// <summary>How well the height cut is known after some mowings, beside the plain mean of what was read.</summary>
internal static class CutsRun
{
    private static readonly int[] After = [1, 3, 5, 10];

    /// <summary>Options: --units N, --first SEED, --jobs N, --variant told (bench heights told with the mowings only).</summary>
    public static int Print(string[] args)
    {
        var o = new Options(args);
        var seeds = o.Seeds(60);
        var told = o.Word("--variant") == "told";
        Console.WriteLine($"{seeds.Length} units on a turf each from {seeds[0]}, {(told ? "the bench height told with each mowing" : "a pair of gauge readings before each mowing")}, five spots after it");
        Console.WriteLine("a simulator of our own with invented units, no field trial");
        Console.WriteLine();
        var all = new CutSeason[seeds.Length];
        HeightsRun.Each(seeds.Length, o.Jobs, i => all[i] = CutSeason.Of(seeds[i], After, told));

        var lines = new List<string[]> { ([.. After.Select(k => $"after {k}").Prepend("mean cut at a bench height, error in mm RMS")]) };
        lines.Add(["plain mean", .. After.Select(k => Rms([.. all.Select(s => s.PlainMm.Single(p => p.Mowings == k).Mm)]))]);
        lines.Add(["Closemown", .. After.Select(k => Rms([.. all.Select(s => Error(s, k))]))]);
        lines.Add(["ratio of squares", .. After.Select(k => OverUnits.Ratio([.. all.Select(s => Square(Error(s, k)))], [.. all.Select(s => Square(s.PlainMm.Single(p => p.Mowings == k).Mm))]).Text("0.00"))]);
        Table.Write(lines);
        HeightTable.PrintSaid("Closemown", [.. all.Select(s => s.Said.ToArray())], [.. After.Select(k => (k, k))]);
        return 0;

        static double Error(CutSeason s, int k) => s.Said.Single(x => x.What == CutSeason.MeanCut && x.When == k) is var x ? x.Mean - x.Truth : double.NaN;
        static double Square(double x) => x * x;
    }

    /// <summary>Root of the mean square with its standard error, by the square's own.</summary>
    private static string Rms(double[] errors)
    {
        var square = OverUnits.Mean([.. errors.Select(e => e * e)]);
        var root = Math.Sqrt(square.Value);
        return new OverUnits(root, square.Se / (2 * root)).Text("0.000");
    }
}
