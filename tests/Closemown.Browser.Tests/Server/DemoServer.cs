using System.Globalization;
using System.Text.Json.Nodes;
using Closemown.Serving;
using Closemown.Tests.Web;

namespace Closemown.Browser.Tests;

/// <summary>The real server over a copy of the demo's book, as <c>closemown demo --serve</c> starts it: time goes by the book.</summary>
internal static class DemoServer
{
    /// <summary>Starts one on a free port of this machine, with a book that is its own: a test that enters something starts one for itself.</summary>
    public static async Task<ServerBench> Start()
    {
        var lines = Lines();
        var server = await ServerBench.Start(
            // Many pages at once come from what counts as one device here.
            o => o with { TimeOfTheBook = true, Limits = new ServeLimits { RequestsPerSecond = 10_000 } },
            lines);
        server.Time.Now = lines.Max(At).AddMinutes(1);
        return server;
    }

    /// <summary>The entries of all files of the demo, the season before what was added to it.</summary>
    private static List<string> Lines() =>
        [.. Directory.EnumerateFiles(Path.Combine(AppContext.BaseDirectory, "demo"), "*.jsonl").OrderBy(Path.GetFileNameWithoutExtension, StringComparer.Ordinal).SelectMany(File.ReadLines)];

    private static DateTimeOffset At(string line) => DateTimeOffset.Parse((string)JsonNode.Parse(line)!["at"]!, CultureInfo.InvariantCulture);
}
