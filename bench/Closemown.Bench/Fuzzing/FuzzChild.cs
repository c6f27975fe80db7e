using System.Diagnostics;
using System.Globalization;
using Closemown.Fuzzing;

namespace Closemown.Bench.Fuzzing;

/// <summary>Fuzzes one target in this process, which runs over instrumented assemblies, and prints its row of the table.</summary>
internal static class FuzzChild
{
    public static int Run(string[] args)
    {
        // Before anything that is instrumented runs.
        using var map = new EdgeMap();
        return Target(map, args);
    }

    private static int Target(EdgeMap map, string[] args)
    {
        var (folder, name, seconds, seed) = (args[0], args[1], double.Parse(args[2], CultureInfo.InvariantCulture), int.Parse(args[3], CultureInfo.InvariantCulture));
        var target = FuzzTargets.Of(name) ?? throw new ArgumentException($"There is no target {name}.");
        using var atHand = new InputAtHand(folder, name);
        var hunt = new CoverageHunt(target, map, atHand, seed);
        hunt.Begin();
        var (live, resident) = Memory();
        var watch = Stopwatch.StartNew();
        hunt.Go(TimeSpan.FromSeconds(seconds));
        var took = watch.Elapsed.TotalSeconds;
        var (liveThen, residentThen) = Memory();
        foreach (var crash in hunt.Crashes) Console.Error.WriteLine($"{name}: {crash.Signature}\n  {crash.Shown()}\n  {CrashFolder.Keep(folder, name, crash.FileName, crash.Input, crash.Told)}");
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"| {name} | {hunt.Runs} | {hunt.Runs / took:0} | {hunt.Known.Count} | {map.Edges} | {hunt.Crashes.Count} | {live:0.0}, {liveThen:0.0} | {resident:0}, {residentThen:0} |"));
        return hunt.Crashes.Count == 0 ? 0 : 1;
    }

    private static (double LiveMb, double ResidentMb) Memory()
    {
        var live = GC.GetTotalMemory(forceFullCollection: true);
        using var process = Process.GetCurrentProcess();
        return (live / 1e6, process.WorkingSet64 / 1e6);
    }
}
