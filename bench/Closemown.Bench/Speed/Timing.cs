using System.Diagnostics;

namespace Closemown.Bench.Speed;

/// <summary>Milliseconds of one call over several: CPU time of this process (median and least) and time by the clock (median).</summary>
/// <remarks>CPU time is the fairer figure on a machine that does other things beside; it still grows where neighbours fill the caches.</remarks>
internal readonly record struct Timing(double Cpu, double Least, double Wall)
{
    /// <summary>Calls once for the compiler's sake, then up to <paramref name="times"/> times, at least three, until eight seconds are over.</summary>
    public static Timing Of(Action call, int times = 15)
    {
        List<double> cpu = [], wall = [];
        call();
        var since = Stopwatch.GetTimestamp();
        while (cpu.Count < times && (cpu.Count < 3 || Stopwatch.GetElapsedTime(since).TotalSeconds < 8))
        {
            var (used, start) = (Environment.CpuUsage.TotalTime, Stopwatch.GetTimestamp());
            call();
            wall.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
            cpu.Add((Environment.CpuUsage.TotalTime - used).TotalMilliseconds);
        }
        cpu.Sort();
        wall.Sort();
        return new(cpu[cpu.Count / 2], cpu[0], wall[wall.Count / 2]);
    }

    public override string ToString() => FormattableString.Invariant($"{Cpu:0.00} | {Least:0.00} | {Wall:0.00}");
}
