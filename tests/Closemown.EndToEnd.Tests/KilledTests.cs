using System.Text.Json.Nodes;
using Xunit;

namespace Closemown.EndToEnd.Tests;

/// <summary>The program is killed at any moment; what it acknowledged is in the book.</summary>
public sealed class KilledTests
{
    private const int Kills = 50;

    private static string Line(int n) => $$"""{"v":1,"id":"019de28d-3c00-7000-8000-{{n:x12}}","at":"{{new DateTimeOffset(2026, 5, 1, 8, 0, 0, TimeSpan.Zero).AddSeconds(n):yyyy-MM-ddTHH:mm:ss}}+00:00","kind":"mow","unit":"mower","hours":0.5}""";

    [Fact]
    public async Task Fifty_times_while_it_takes_entries()
    {
        using var bench = new Bench();
        var random = new Random(20260503);
        var acknowledged = new HashSet<string>();
        var (sent, inTheMiddle) = (0, 0);
        for (var kill = 0; kill < Kills; kill++)
        {
            using var process = bench.Begin("pipe");
            var answers = new List<string>();
            var reading = Task.Run(() =>
            {
                while (process.StandardOutput.ReadLine() is { } line) answers.Add(line);
            }, TestContext.Current.CancellationToken);
            // More than it can take before it is killed, so that the kill falls between two entries or into one.
            var lines = string.Join('\n', Enumerable.Range(sent, 400).Select(Line)) + "\n";
            var writing = Task.Run(() =>
            {
                try
                {
                    process.StandardInput.Write(lines);
                    process.StandardInput.Flush();
                }
                catch (IOException)
                {
                    // It was killed before it had read them all.
                }
            }, TestContext.Current.CancellationToken);
            // Most once it has taken a few, however slow the machine; some while the program starts and opens the book.
            var few = random.Next(1, 6);
            if (kill % 10 != 0) SpinWait.SpinUntil(() => answers.Count >= few, TimeSpan.FromSeconds(30));
            Thread.Sleep(random.Next(kill % 10 == 0 ? 200 : 40));
            process.Kill();
            process.WaitForExit();
            await Task.WhenAll(reading, writing);
            // An answer of which the end is missing was not given.
            foreach (var answer in answers.Where(a => a.EndsWith('}')))
            {
                var said = JsonNode.Parse(answer)!;
                Assert.True(said["ok"]!.GetValue<bool>(), answer);
                acknowledged.Add(said["id"]!.GetValue<string>());
            }
            if (answers.Count is > 0 and < 400) inTheMiddle++;
            sent = acknowledged.Count;             // what was under way comes again, and is known or new
        }
        Assert.True(inTheMiddle > Kills / 2, $"only {inTheMiddle} kills fell while entries were taken");
        var verified = bench.Run("book", "verify", "--json");
        Assert.Equal(0, verified.Exit);
        var held = bench.Run("book", "export").Lines.Select(l => JsonNode.Parse(l)!["id"]!.GetValue<string>()).ToHashSet();
        Assert.Equal(verified.Json["entries"]!.GetValue<int>(), held.Count);
        Assert.Empty(acknowledged.Except(held));
        Assert.True(acknowledged.Count > Kills, $"only {acknowledged.Count} entries were acknowledged");
    }

    [Fact]
    public void While_it_imports_backs_up_and_restores()
    {
        using var bench = new Bench();
        var random = new Random(20260504);
        var lines = Path.Combine(bench.Folder, "lines.jsonl");
        File.WriteAllLines(lines, Enumerable.Range(0, 3000).Select(Line));
        var other = Path.Combine(bench.Folder, "other.closemown");
        Assert.Equal(0, bench.Run("book", "import", lines, "--book", other).Exit);
        var head = bench.Run("book", "verify", "--json", "--book", other).Json["head"]!.GetValue<string>();
        for (var n = 0; n < 4; n++)
        {
            Killed(bench, random.Next(100, 700), "book", "import", lines);
            if (File.Exists(bench.Book) && new FileInfo(bench.Book).Length > 0) Assert.Equal(0, bench.Run("book", "verify").Exit);
        }
        Assert.Equal(0, bench.Run("book", "import", lines).Exit);
        Assert.Equal(head, bench.Run("book", "verify", "--json").Json["head"]!.GetValue<string>());

        for (var n = 0; n < 4; n++)
        {
            var copy = Path.Combine(bench.Folder, $"copy-{n}.closemown");
            Killed(bench, random.Next(100, 700), "book", "backup", copy);
            // Under its own name there is a whole copy or none.
            if (File.Exists(copy)) Assert.Equal(head, bench.Run("book", "verify", "--json", "--book", copy).Json["head"]!.GetValue<string>());
        }

        File.WriteAllText(lines, Line(5000) + "\n");
        Assert.Equal(0, bench.Run("book", "import", lines, "--book", bench.Book).Exit);
        var later = bench.Run("book", "verify", "--json").Json["head"]!.GetValue<string>();
        for (var n = 0; n < 4; n++)
        {
            Killed(bench, random.Next(100, 900), "book", "restore", other);
            // The book that was there, or the one brought back: nothing between.
            Assert.Contains(bench.Run("book", "verify", "--json").Json["head"]!.GetValue<string>(), new[] { head, later });
        }
        Assert.Equal(0, bench.Run("book", "restore", other).Exit);
        Assert.Equal(head, bench.Run("book", "verify", "--json").Json["head"]!.GetValue<string>());
        Assert.Contains(Directory.GetFiles(bench.Folder, "book-before-restore-*.closemown"), k => bench.Run("book", "verify", "--json", "--book", k).Json["head"]!.GetValue<string>() == later);
    }

    private static void Killed(Bench bench, int afterMs, params string[] args)
    {
        using var process = bench.Begin(args);
        process.StandardInput.Close();
        var (output, error) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        if (!process.WaitForExit(afterMs)) process.Kill();
        process.WaitForExit();
        Task.WaitAll(output, error);
    }
}
