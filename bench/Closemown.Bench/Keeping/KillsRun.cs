using System.Diagnostics;
using System.Globalization;
using System.Text.Json.Nodes;
using Closemown.Book;

namespace Closemown.Bench.Keeping;

/// <summary>Kills a writing process at random moments (SIGKILL) and looks at what it left: kills --count N [--seed S].</summary>
/// <remarks>A killed process leaves what it handed to the system; what a power cut leaves depends on the disk and is not tried here.</remarks>
internal sealed class KillsRun(int seed) : IDisposable
{
    private const int EntriesABook = 600;

    private readonly string folder = Directory.CreateTempSubdirectory("closemown-kills-").FullName;
    private readonly Random random = new(seed);
    private readonly Dictionary<string, string> acknowledged = [];
    private readonly SortedDictionary<string, int> kills = new(StringComparer.Ordinal);
    private long allAcknowledged, lost, invalid, lateKills, books;

    public static int Print(string[] args)
    {
        var (count, seed) = (Options.Number(args, "--count", 1000), Options.Number(args, "--seed", 20260501));
        using var run = new KillsRun(seed);
        var watch = Stopwatch.StartNew();
        var others = count / 20;
        run.Pipes(count - (3 * others));
        run.Imports(others);
        run.Backups(others);
        run.Restores(others);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"seed {seed}: {run.kills.Values.Sum()} kills ({string.Join(", ", run.kills.Select(k => $"{k.Value} {k.Key}"))}; {run.lateKills} came after the end), {run.books} books, {run.allAcknowledged} entries acknowledged, {run.lost} lost, {run.invalid} invalid chains or copies, {watch.Elapsed.TotalSeconds:0} s"));
        return run.lost == 0 && run.invalid == 0 ? 0 : 1;
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);

    private string At(string name) => Path.Combine(folder, name);

    private static string Id(int n) => $"019de28d-3c00-7000-8000-{n:x12}";

    private static string Line(int n) =>
        $$"""{"v":1,"id":"{{Id(n)}}","at":"{{new DateTimeOffset(2026, 5, 1, 8, 0, 0, TimeSpan.Zero).AddSeconds(n):yyyy-MM-ddTHH:mm:ss}}+00:00","kind":{{(n % 3) switch { 0 => "\"mow\",\"hours\":0.5", 1 => "\"clicks\",\"left\":1,\"right\":-1", _ => "\"contact\",\"left\":\"light\",\"right\":\"none\"" }}},"unit":"mower"}""";

    private Process Begin(string what, params string[] paths) => Process.Start(new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "Closemown.Bench.dll"), "kills-child", what, .. paths])
    {
        RedirectStandardInput = true,
        RedirectStandardOutput = true,
    })!;

    private void Pipes(int count)
    {
        var book = At("none");
        var sent = EntriesABook;
        for (var kill = 0; kill < count; kill++)
        {
            if (sent >= EntriesABook)
            {
                (book, sent) = (At($"book-{++books}.closemown"), 0);
                acknowledged.Clear();
            }
            using var process = Begin("pipe", book);
            var answers = new List<string>();
            var reading = Task.Run(() =>
            {
                while (process.StandardOutput.ReadLine() is { } line)
                {
                    lock (answers) answers.Add(line);
                }
            });
            var lines = string.Join('\n', Enumerable.Range(sent, 500).Select(Line)) + "\n";
            var writing = Task.Run(() =>
            {
                try
                {
                    process.StandardInput.Write(lines);
                    process.StandardInput.Flush();
                }
                catch (IOException)
                {
                    // Killed before it had read them all.
                }
            });
            // One in eight while it starts and opens the book, the others once it has answered.
            var early = kill % 8 == 0;
            while (!early && !reading.IsCompleted)
            {
                lock (answers)
                {
                    if (answers.Count > 0) break;
                }
                Thread.Sleep(1);
            }
            Kill(process, early ? 250 : 120, "pipes");
            Task.WaitAll(reading, writing);
            foreach (var answer in answers.Where(a => a.EndsWith('}')))
            {
                var said = JsonNode.Parse(answer)!;
                if (!said["ok"]!.GetValue<bool>()) throw new InvalidOperationException(answer);
                if (acknowledged.TryAdd(said["id"]!.GetValue<string>(), "")) allAcknowledged++;
            }
            sent = acknowledged.Count;
            if (Whole(book, mayBeEmpty: sent == 0)) Count(book);
            else lost += sent;
        }
    }

    private void Count(string path)
    {
        if (!File.Exists(path) || new FileInfo(path).Length == 0) return;
        using var book = BookFile.Open(path, new BookOptions { ReadOnly = true });
        var held = book.ReadAll().Select(s => s.Entry.Id.ToString("D")).ToHashSet();
        lost += acknowledged.Keys.Count(id => !held.Contains(id));
    }

    private void Imports(int count)
    {
        File.WriteAllLines(At("lines.jsonl"), Enumerable.Range(0, 4000).Select(Line));
        for (var kill = 0; kill < count; kill++)
        {
            var book = At("imported.closemown");
            foreach (var old in Directory.GetFiles(folder, "imported*")) File.Delete(old);
            using (var process = Begin("import", book, At("lines.jsonl")))
            {
                process.StandardOutput.ReadLine();
                Kill(process, 400, "imports");
            }
            Whole(book, mayBeEmpty: true);
            using (var again = BookFile.Open(book))
            using (var lines = File.OpenRead(At("lines.jsonl")))
                Importer.Read(lines, again);
            if (Whole(book, mayBeEmpty: false) && Verification.Run(book).Entries != 4000) lost++;
        }
    }

    private void Backups(int count)
    {
        var book = At("imported.closemown");
        for (var kill = 0; kill < count; kill++)
        {
            using var process = Begin("backup", book, At($"copy-{kill}"));
            process.StandardOutput.ReadLine();
            Kill(process, 400, "backups");
            foreach (var copy in Directory.GetFiles(folder, $"copy-{kill}-*.closemown"))
            {
                if (Whole(copy, mayBeEmpty: false) && Verification.Run(copy).Entries != 4000) lost++;
            }
            foreach (var done in Directory.GetFiles(folder, "copy-*")) File.Delete(done);
        }
    }

    private void Restores(int count)
    {
        var book = At("imported.closemown");
        var (long4000, short1) = (At("whole.closemown"), At("short.closemown"));
        Backup.Make(book, long4000, DateOnly.MinValue);
        using (var other = BookFile.Open(At("other.closemown")))
            Importer.Read(new StringReader(Line(0)), other);
        Backup.Make(At("other.closemown"), short1, DateOnly.MinValue);
        for (var kill = 0; kill < count; kill++)
        {
            using var process = Begin("restore", book, short1, long4000);
            process.StandardOutput.ReadLine();
            Kill(process, 500, "restores");
            // In its place there is always one of the two.
            if (Whole(book, mayBeEmpty: false) && Verification.Run(book).Entries is not (1 or 4000)) lost++;
            foreach (var kept in Directory.GetFiles(folder, "imported-before-restore-*.closemown"))
            {
                Whole(kept, mayBeEmpty: false);
                File.Delete(kept);
            }
        }
    }

    private void Kill(Process process, int withinMs, string what)
    {
        Thread.Sleep(random.Next(withinMs));
        if (process.HasExited) lateKills++;
        else process.Kill();
        process.WaitForExit();
        kills[what] = kills.GetValueOrDefault(what) + 1;
    }

    private bool Whole(string path, bool mayBeEmpty)
    {
        if (mayBeEmpty && (!File.Exists(path) || new FileInfo(path).Length == 0)) return true;
        try
        {
            var report = Verification.Run(path);
            if (report.Ok) return true;
            Console.WriteLine($"{path}: {report.Problems[0]}");
        }
        catch (BookException e)
        {
            // A book that was being made has nothing in it yet.
            if (mayBeEmpty && e.Trouble == BookTrouble.Missing) return true;
            Console.WriteLine(e.Message);
        }
        invalid++;
        return false;
    }
}
