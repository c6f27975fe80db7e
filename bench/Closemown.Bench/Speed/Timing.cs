using System.Diagnostics;

namespace Closemown.Bench.Speed;

/// <summary>Milliseconds of one call: the median of several, and the least.</summary>
/// <param name="Median">What a person meets on this machine as busy as it was.</param>
/// <param name="Least">What the work needs where nothing else runs.</param>
internal readonly record struct Timing(double Median, double Least)
{
    /// <summary>Calls at least <paramref name="times"/> times after as many for the compiler's sake; <paramref name="before"/> is not counted.</summary>
    public static Timing Of(Action call, int times = 9, Action? before = null)
    {
        var taken = new List<double>();
        var since = Stopwatch.GetTimestamp();
        for (var k = 0; k < 2 * times; k++)
        {
            before?.Invoke();
            var start = Stopwatch.GetTimestamp();
            call();
            if (k >= times) taken.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
            if (k >= times && taken.Count >= 3 && Stopwatch.GetElapsedTime(since).TotalSeconds > 8) break;
        }
        taken.Sort();
        return new(taken[taken.Count / 2], taken[0]);
    }
}
