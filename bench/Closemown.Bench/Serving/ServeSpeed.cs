using System.Diagnostics;

namespace Closemown.Bench.Serving;

/// <summary>Time from starting the server to its first answer, beside the smallest web program on the same runtime, in turn.</summary>
internal static class ServeSpeed
{
    private const int Times = 9;

    /// <param name="args">The launcher, where it is not ./closemown of the present folder.</param>
    public static int Print(string[] args)
    {
        var launcher = Path.GetFullPath(args.Length > 0 ? args[0] : "closemown");
        var root = Path.GetDirectoryName(launcher)!;
        var hello = Path.Combine(root, "artifacts", "bin", "Closemown.Hello", "release", "Closemown.Hello.dll");
        if (!File.Exists(launcher) || !File.Exists(hello))
        {
            Console.Error.WriteLine("Run this in the folder of the sources, after ./closemown new --help and dotnet build -c Release bench/Closemown.Hello.");
            return 1;
        }
        var folder = Directory.CreateTempSubdirectory("closemown-serve-").FullName;
        Environment.SetEnvironmentVariable("CLOSEMOWN_SETTINGS", Path.Combine(folder, "settings.json"));
        var book = Path.Combine(folder, "book.closemown");
        using (var import = Process.Start(new ProcessStartInfo(launcher, ["book", "import", Path.Combine(AppContext.BaseDirectory, "demo", "ferncombe.jsonl"), "--book", book]) { RedirectStandardOutput = true })!) import.WaitForExit();
        var (plain, health, page) = (new List<double>(), new List<double>(), new List<double>());
        for (var k = 0; k < Times; k++)
        {
            plain.Add(Taken("dotnet", p => [hello, "--urls", $"http://127.0.0.1:{p}"], "/"));
            health.Add(Taken(launcher, p => ["serve", "--port", $"{p}", "--book", book], "/health"));
            page.Add(Taken(launcher, p => ["serve", "--port", $"{p}", "--book", book], "/"));
        }
        Directory.Delete(folder, recursive: true);
        foreach (var times in new[] { plain, health, page }) times.Sort();
        Console.WriteLine("| from the start to the first answer | ms, median | least | times the first, medians | least |\n|---|---|---|---|---|");
        foreach (var (what, times) in new[] { ("a web program that says hello", plain), ("./closemown serve, ready (/health)", health), ("./closemown serve, the first page, today reckoned anew", page) })
            Console.WriteLine(FormattableString.Invariant($"| {what} | {times[Times / 2]:0} | {times[0]:0} | {times[Times / 2] / plain[Times / 2]:0.0} | {times[0] / plain[0]:0.0} |"));
        return 0;
    }

    private static double Taken(string file, Func<int, string[]> words, string path)
    {
        var port = ServerRun.FreePort();
        using var client = new HttpClient { BaseAddress = new($"http://127.0.0.1:{port}/") };
        var start = Stopwatch.GetTimestamp();
        using var server = ServerRun.Start(file, words(port));
        ServerRun.Ready(client, path).Wait(TimeSpan.FromSeconds(60));
        return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    }
}
