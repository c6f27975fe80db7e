using System.Diagnostics;
using System.Text.Json.Nodes;

namespace Closemown.Browser.Tests;

/// <summary>The way of a new user, timed: from the first call of ./closemown in a fresh clone to the first paper check of their own, on a phone's size of screen.</summary>
/// <remarks>Reading and thinking are not in it: what is left of two minutes after it is theirs.</remarks>
internal static class FirstUseRun
{
    private const double WantedS = 120;

    /// <param name="args">The folder of a clone in which nothing was built.</param>
    public static async Task<int> Print(string[] args)
    {
        var launcher = args.Length == 1 ? Path.GetFullPath(Path.Combine(args[0], "closemown")) : "";
        if (!File.Exists(launcher) || Directory.Exists(Path.Combine(args[0], "artifacts")))
        {
            await Console.Error.WriteLineAsync("After first-use name the folder of a fresh clone, in which nothing was built yet: git clone . /tmp/fresh");
            return 2;
        }
        var folder = Directory.CreateTempSubdirectory("closemown-first-").FullName;
        var clock = Stopwatch.StartNew();
        void Reached(string what) => Console.WriteLine(FormattableString.Invariant($"| {clock.Elapsed.TotalSeconds:0.0} | {what} |"));
        Console.WriteLine("| s | reached |\n|---|---|");
        using var server = Process.Start(new ProcessStartInfo(launcher, ["serve", "--port", "0", "--json", "--book", Path.Combine(folder, "own.book")])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            Environment = { ["CLOSEMOWN_SETTINGS"] = Path.Combine(folder, "settings.json") },
        })!;
        try
        {
            var line = await server.StandardOutput.ReadLineAsync() ?? throw new InvalidOperationException("The server did not start.");
            Reached("the server says where it is");
            await using var chromium = await Chromium.Start();
            await using var visit = await Visit.Start(chromium.Browser, new((string)JsonNode.Parse(line)!["serve"]!["address"]!), new(ViewSize.Phone));
            await visit.Open("/");
            Reached("the first page");
            await FirstCheck.Begin(visit.Page);
            Reached("touch 1, Begin: the four questions");
            await FirstCheck.GoOn(visit.Page);
            Reached("touch 2, Go on: the paper check");
            await FirstCheck.Tell(visit.Page);
            Reached("touches 3 to 5: what the paper did at three stations");
            await FirstCheck.Write(visit.Page);
            Reached("touch 6, Write it down: it is in the book");
        }
        finally
        {
            server.Kill(entireProcessTree: true);
            await server.WaitForExitAsync();
            Directory.Delete(folder, recursive: true);
        }
        Console.WriteLine(FormattableString.Invariant($"wanted: {WantedS:0} s, with reading and thinking"));
        return 0;
    }
}
