using System.Diagnostics;
using System.Globalization;
using Closemown.Bench.Keeping;

namespace Closemown.Bench.Mutating;

/// <summary>How many small changes of the sources the tests notice: mutate [--project NAME] [--sample N] [--seed N] [--processes N]; without a project Estimation, Entries, Book and Advice.</summary>
internal static class MutateRun
{
    // The tests that are meant to hold each project; tests of others that would notice a change too are not counted.
    private static readonly (string Project, string Tests, string Namespaces)[] Projects =
    [
        ("Closemown.Estimation", "Closemown.Estimation.Tests", "Closemown.Estimation.Tests"),
        ("Closemown.Entries", "Closemown.Tests", "Closemown.Tests.Entries,Closemown.Tests.Faults,Closemown.Tests.Pipe"),
        ("Closemown.Book", "Closemown.Tests", "Closemown.Tests.Book,Closemown.Tests.Faults"),
        ("Closemown.Advice", "Closemown.Tests", "Closemown.Tests.Advice,Closemown.Tests.Pipe,Closemown.Tests.Practice,Closemown.Tests.Faults"),
    ];

    private const double Longest = 4;

    public static int Print(string[] args)
    {
        var at = Array.IndexOf(args, "--project");
        var (sample, seed, processes) = (Options.Number(args, "--sample", 0x7fffffff), Options.Number(args, "--seed", 1), Options.Number(args, "--processes", Environment.ProcessorCount));
        var root = Directory.GetCurrentDirectory();
        if (!File.Exists(Path.Combine(root, "Closemown.slnx"))) throw new ArgumentException("Run it in the folder of the solution.");
        var rows = new List<string>();
        foreach (var (project, tests, namespaces) in Projects.Where(p => at < 0 || p.Project == args[at + 1] || p.Project == "Closemown." + args[at + 1])) rows.Add(Row(root, project, tests, namespaces, sample, seed, processes));
        Console.WriteLine("\n| project | mutants | tried | killed | survived | reached by no test | score |\n|---|---|---|---|---|---|---|");
        foreach (var row in rows) Console.WriteLine(row);
        return 0;
    }

    private static string Row(string root, string project, string tests, string namespaces, int sample, int seed, int processes)
    {
        var mutated = new MutatedProject(root, project, tests);
        var mutants = mutated.Build();
        var most = mutants.Max(m => m.Id);
        var (reached, folder) = (Path.Combine(mutated.Copy, "reached.txt"), mutated.Copy);
        string[] words = ["mutate-child", mutated.Tests, project, namespaces, most.ToString(CultureInfo.InvariantCulture), Longest.ToString(CultureInfo.InvariantCulture), reached];
        Child(words).WaitForExit();
        var covered = File.ReadLines(reached).SelectMany(l => l.Split('\t')[2].Split(',', StringSplitOptions.RemoveEmptyEntries)).Select(int.Parse).ToHashSet();
        var random = new Random(seed);
        var tried = mutants.OrderBy(_ => random.Next()).Take(sample).ToList();
        var results = Live(folder, words, [.. tried.Where(m => covered.Contains(m.Id)).Select(m => m.Id)], processes);
        var survivors = tried.Where(m => results.GetValueOrDefault(m.Id) == "survived").OrderBy(m => m.Id).ToList();
        var unreached = tried.Where(m => !covered.Contains(m.Id)).OrderBy(m => m.Id).ToList();
        var killed = tried.Count - survivors.Count - unreached.Count;
        Console.WriteLine($"\n{project}: survivors");
        foreach (var m in survivors) Console.WriteLine($"  {m}");
        Console.WriteLine($"{project}: reached by no test");
        foreach (var m in unreached) Console.WriteLine($"  {m}");
        return string.Create(CultureInfo.InvariantCulture, $"| {project} | {mutants.Count} | {tried.Count} | {killed} | {survivors.Count} | {unreached.Count} | {100.0 * killed / Math.Max(1, tried.Count):0.0} % |");
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
