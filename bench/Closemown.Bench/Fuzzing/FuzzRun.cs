using System.Diagnostics;
using System.Globalization;
using Closemown.Bench.Keeping;
using Closemown.Fuzzing;

namespace Closemown.Bench.Fuzzing;

/// <summary>Fuzzes every reader, led by what inputs reach: fuzz [--seconds N] [--seed N] [--target NAME].</summary>
/// <remarks>Each target is run by a process of its own over instrumented copies of the assemblies, so that an end of the process is a finding too.</remarks>
internal static class FuzzRun
{
    private const int Clean = 0, Found = 1;

    public static int Print(string[] args)
    {
        var (seconds, seed) = (Options.Number(args, "--seconds", 3600), Options.Number(args, "--seed", 1));
        var named = Array.IndexOf(args, "--target") is >= 0 and var at && at + 1 < args.Length ? args[at + 1] : null;
        if (named is not null && !FuzzTargets.Names.Contains(named))
        {
            Console.Error.WriteLine($"There is no target \"{named}\". Targets are {string.Join(", ", FuzzTargets.Names)}.");
            return 2;
        }
        string[] names = named is not null ? [named] : [.. FuzzTargets.Names];
        var folder = Path.GetFullPath(Path.Combine("artifacts", "fuzz"));
        var program = Instrumented.Make(AppContext.BaseDirectory, Path.Combine(folder, "bin"));
        var shares = names.ToDictionary(n => n, n => FuzzTargets.Of(n)!.Weight);
        Console.WriteLine(FormattableString.Invariant($"{seconds} s over {names.Length} targets, seed {seed}"));
        Console.WriteLine("| target | runs | runs/s | corpus | edges | crashes | live MB at start, end | resident MB at start, end |\n|---|---|---|---|---|---|---|---|");
        var worst = Clean;
        foreach (var name in names)
        {
            var part = seconds * (double)shares[name] / shares.Values.Sum();
            worst = Math.Max(worst, One(program, folder, name, part, seed));
        }
        Console.WriteLine(worst == Clean ? "No crash." : $"Crashes are in {Path.Combine(folder, "crashes")}.");
        return worst;
    }

    private static int One(string program, string folder, string name, double seconds, int seed)
    {
        var info = new ProcessStartInfo("dotnet", ["exec", program, "fuzz-child", folder, name, seconds.ToString("R", CultureInfo.InvariantCulture), seed.ToString(CultureInfo.InvariantCulture)]);
        using var child = Process.Start(info)!;
        child.WaitForExit();
        if (child.ExitCode is Clean or Found) return child.ExitCode;
        // Too deep, too large or too long: what was being read then lies in a file that outlives the process.
        var file = CrashFolder.Keep(folder, name, $"ended-{child.ExitCode}", InputAtHand.Left(folder, name), $"The process ended with exit code {child.ExitCode}.");
        Console.WriteLine($"| {name} | | | | | the process ended ({child.ExitCode}): {file} | | |");
        return Found;
    }
}
