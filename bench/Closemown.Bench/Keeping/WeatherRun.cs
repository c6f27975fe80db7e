using System.Diagnostics;
using System.Globalization;
using System.Text.Json.Nodes;

namespace Closemown.Bench.Keeping;

/// <summary>Reads 150 years of an invented station's days into a new book through the real command, twice: weather [--years N] [--seed S] [--launcher PATH].</summary>
/// <remarks>The peak is the process's own count of its largest working set, looked at every few milliseconds until it ends.</remarks>
internal static class WeatherRun
{
    private const int LookMs = 5;

    public static int Print(string[] args)
    {
        var (years, seed) = (Options.Number(args, "--years", 150), Options.Number(args, "--seed", 20260501));
        var launcher = Path.GetFullPath(Array.IndexOf(args, "--launcher") is >= 0 and var at && at + 1 < args.Length ? args[at + 1] : "closemown");
        if (!File.Exists(launcher))
        {
            Console.Error.WriteLine($"There is no launcher at {launcher}: run this in the folder of the sources, or name it with --launcher.");
            return 1;
        }
        var folder = Directory.CreateTempSubdirectory("closemown-weather-").FullName;
        try
        {
            var file = Path.Combine(folder, "station.csv");
            var first = new DateOnly(2026 - years, 1, 1);
            var days = new DateOnly(2026, 1, 1).DayNumber - first.DayNumber;
            int rows;
            using (var to = new StreamWriter(file)) rows = MadeStation.Write(to, first, days, seed);
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"seed {seed}: {days} days, {rows} rows of five elements, {new FileInfo(file).Length / 1e6:0.0} MB"));
            // So that it is built.
            Run(launcher, folder, "settings", "--json");
            var added = Told("first reading", launcher, folder, file);
            var again = Told("second reading", launcher, folder, file);
            return added == days && again == 0 ? 0 : 1;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static int Told(string what, string launcher, string folder, string file)
    {
        var (answer, took, peak) = Run(launcher, folder, "book", "weather", file, "--area", "green", "--json");
        var told = JsonNode.Parse(answer)!;
        var added = (int)told["added"]!;
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what}: {took.TotalSeconds:0.0} s, peak {peak / 1e6:0} MB; {added} days new, {(int)told["alreadyThere"]!} there already, {(int)told["traces"]!} traces, {told["dropped"]!.AsObject().Sum(d => (int)d.Value!)} dropped, book {new FileInfo(Path.Combine(folder, "book.closemown")).Length / 1e6:0.0} MB"));
        return added;
    }

    private static (string Answer, TimeSpan Took, long PeakBytes) Run(string launcher, string folder, params string[] args)
    {
        var info = new ProcessStartInfo(launcher, args) { RedirectStandardOutput = true };
        info.Environment["CLOSEMOWN_BOOK"] = Path.Combine(folder, "book.closemown");
        info.Environment["CLOSEMOWN_SETTINGS"] = Path.Combine(folder, "settings.json");
        var watch = Stopwatch.StartNew();
        using var process = Process.Start(info)!;
        var answer = process.StandardOutput.ReadToEndAsync();
        var peak = 0L;
        while (!process.WaitForExit(LookMs))
        {
            try
            {
                process.Refresh();
                peak = Math.Max(peak, process.PeakWorkingSet64);
            }
            catch (InvalidOperationException)
            {
                // It ended in between.
            }
        }
        var took = watch.Elapsed;
        if (process.ExitCode != 0) throw new InvalidOperationException($"{string.Join(' ', args)} ended with {process.ExitCode.ToString(CultureInfo.InvariantCulture)}.");
        return (answer.Result, took, peak);
    }
}
