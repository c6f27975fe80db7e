using System.Diagnostics;
using System.Globalization;
using Closemown.Bench.Keeping;

namespace Closemown.Bench.Mutating;

/// <summary>How many small changes of the sources the tests notice: mutate [--project NAME] [--sample N] [--seed N] [--processes N]; without a project Estimation, Entries, Book and Advice.</summary>
internal static class MutateRun
{
    // The tests that are meant to hold each project, and those next to it that would notice a change first.
    private static readonly (string Project, (string Tests, string Namespaces)[] Suites)[] Projects =
    [
        ("Closemown.Estimation", [("Closemown.Estimation.Tests", "Closemown.Estimation.Tests"), ("Closemown.Tests", "Closemown.Tests.Steel,Closemown.Tests.Height,Closemown.Tests.Pipe")]),
        ("Closemown.Entries", [("Closemown.Tests", "Closemown.Tests.Entries,Closemown.Tests.Faults,Closemown.Tests.Pipe")]),
        ("Closemown.Book", [("Closemown.Tests", "Closemown.Tests.Book,Closemown.Tests.Faults")]),
        ("Closemown.Advice", [("Closemown.Tests", "Closemown.Tests.Advice,Closemown.Tests.Pipe,Closemown.Tests.Practice,Closemown.Tests.Faults")]),
    ];

    private const double Longest = 4;

    public static int Print(string[] args)
    {
        var at = Array.IndexOf(args, "--project");
        var (sample, seed, processes) = (Options.Number(args, "--sample", 0x7fffffff), Options.Number(args, "--seed", 1), Options.Number(args, "--processes", Environment.ProcessorCount));
        var root = Directory.GetCurrentDirectory();
        if (!File.Exists(Path.Combine(root, "Closemown.slnx"))) throw new ArgumentException("Run it in the folder of the solution.");
        var rows = new List<string>();
        foreach (var (project, suites) in Projects.Where(p => at < 0 || p.Project == args[at + 1] || p.Project == "Closemown." + args[at + 1]))
            rows.Add(Row(root, project, suites, sample, seed, processes));
        Console.WriteLine("\n| project | mutants | tried | killed | survived | reached by no test | score |\n|---|---|---|---|---|---|---|");
        foreach (var row in rows) Console.WriteLine(row);
        return 0;
    }

    private static string Row(string root, string project, (string Tests, string Namespaces)[] suites, int sample, int seed, int processes)
    {
        var mutated = new MutatedProject(root, project, [.. suites.Select(s => s.Tests)]);
        var mutants = mutated.Build();
        var random = new Random(seed);
        var tried = mutants.OrderBy(_ => random.Next()).Take(sample).ToList();
        var (reached, killed) = (new HashSet<int>(), new HashSet<int>());
        foreach (var (tests, namespaces) in suites)
        {
            var file = Path.Combine(mutated.Copy, "reached.txt");
            string[] words = ["mutate-child", mutated.Built(tests), project, namespaces, mutants.Max(m => m.Id).ToString(CultureInfo.InvariantCulture), Longest.ToString(CultureInfo.InvariantCulture), file];
            Child(words).WaitForExit();
            var covered = File.ReadLines(file).SelectMany(l => l.Split('\t')[2].Split(',', StringSplitOptions.RemoveEmptyEntries)).Select(int.Parse).ToHashSet();
            reached.UnionWith(covered);
            var results = Live(mutated.Copy, words, [.. tried.Where(m => covered.Contains(m.Id) && !killed.Contains(m.Id)).Select(m => m.Id)], processes);
            killed.UnionWith(results.Where(r => r.Value != "survived").Select(r => r.Key));
        }
        Tell($"{project}: survivors", tried.Where(m => reached.Contains(m.Id) && !killed.Contains(m.Id)), out var survived);
        Tell($"{project}: reached by no test", tried.Where(m => !reached.Contains(m.Id)), out var unreached);
        return string.Create(CultureInfo.InvariantCulture, $"| {project} | {mutants.Count} | {tried.Count} | {killed.Count} | {survived} | {unreached} | {100.0 * killed.Count / Math.Max(1, tried.Count):0.0} % |");
    }

    private static void Tell(string title, IEnumerable<Mutant> mutants, out int count)
    {
        Console.WriteLine(title);
        count = 0;
        foreach (var m in mutants.OrderBy(m => m.Id))
        {
            Console.WriteLine($"  {m}");
            count++;
        }
    }

    private static Dictionary<int, string> Live(string folder, string[] words, int[] ids, int processes)
    {
        var results = new Dictionary<int, string>();
        var parts = ids.Select((id, n) => (id, n)).GroupBy(p => p.n % processes).Select(g => g.Select(p => p.id).ToList()).ToList();
        Parallel.ForEach(parts, new ParallelOptions { MaxDegreeOfParallelism = processes }, (part, _, number) =>
        {
            var (left, file, done) = (part, Path.Combine(folder, $"ids-{number}.txt"), Path.Combine(folder, $"results-{number}.txt"));
            File.WriteAllText(done, "");
            while (left.Count > 0)
            {
                File.WriteAllLines(file, left.Select(id => id.ToString(CultureInfo.InvariantCulture)));
                Child([.. words, file, done]).WaitForExit();
                var told = File.ReadLines(done).Select(l => int.Parse(l.Split(' ')[0], CultureInfo.InvariantCulture)).ToHashSet();
                // One that took the whole process with it is noticed as well.
                if (left.TrueForAll(id => !told.Contains(id))) File.AppendAllText(done, $"{left[0]} ended\n");
                else if (left.FirstOrDefault(id => !told.Contains(id)) is > 0 and var next && !File.ReadLines(done).Last().EndsWith("endless", StringComparison.Ordinal)) File.AppendAllText(done, $"{next} ended\n");
                var all = File.ReadLines(done).Select(l => int.Parse(l.Split(' ')[0], CultureInfo.InvariantCulture)).ToHashSet();
                left = [.. left.Where(id => !all.Contains(id))];
            }
            lock (results)
            {
                foreach (var line in File.ReadLines(done).Select(l => l.Split(' '))) results[int.Parse(line[0], CultureInfo.InvariantCulture)] = line[1];
            }
        });
        return results;
    }

    private static Process Child(string[] words) =>
        Process.Start(new ProcessStartInfo("dotnet", ["exec", typeof(MutateRun).Assembly.Location, .. words]))!;
}
