using System.Diagnostics;

namespace Closemown.Bench.Workshop;

/// <summary>Many seasons at once; what comes out does not depend on how many threads there are.</summary>
internal static class Seasons
{
    /// <summary>One season for each contestant and unit, contestant by contestant.</summary>
    public static Season[][] Live(int contestants, int[] seeds, int jobs, Func<int, int, Season> season)
    {
        var all = Enumerable.Range(0, contestants).Select(_ => new Season[seeds.Length]).ToArray();
        var watch = Stopwatch.StartNew();
        Parallel.For(0, contestants * seeds.Length, new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, jobs) }, i =>
        {
            var (unit, who) = Math.DivRem(i, contestants);
            all[who][unit] = season(who, seeds[unit]);
        });
        Console.Error.WriteLine($"({watch.Elapsed.TotalSeconds:0} s)");
        return all;
    }
}
