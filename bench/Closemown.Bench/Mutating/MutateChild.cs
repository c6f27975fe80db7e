using System.Diagnostics;
using System.Globalization;
using System.Reflection;
using System.Runtime.Loader;

namespace Closemown.Bench.Mutating;

/// <summary>Lets mutants live one after another and runs the tests that reach them, in a process of its own, as a mutant may never come back.</summary>
/// <remarks>
/// <c>mutate-child TESTS PROJECT NAMESPACES MOST LONGEST REACHED</c> writes which test reaches which mutants; <c>mutate-child TESTS PROJECT
/// NAMESPACES MOST LONGEST REACHED IDS RESULTS</c> appends a line a mutant: its number, and killed, survived or endless.
/// </remarks>
internal static class MutateChild
{
    public static int Run(string[] args)
    {
        var (tests, project, namespaces, most, longest) = (args[0], args[1], args[2].Split(','), int.Parse(args[3], CultureInfo.InvariantCulture), double.Parse(args[4], CultureInfo.InvariantCulture));
        Directory.SetCurrentDirectory(Path.GetDirectoryName(tests)!);
        AppContext.SetData("APP_CONTEXT_BASE_DIRECTORY", Path.GetDirectoryName(tests) + Path.DirectorySeparatorChar);
        var inner = new TestsContext(tests);
        var assembly = inner.LoadFromAssemblyPath(tests);
        var mutation = inner.LoadFromAssemblyName(new AssemblyName(project)).GetType("Closemown.Mutation")!;
        var (alive, reached) = (mutation.GetField("Alive")!, mutation.GetField("Reached")!);
        var output = Console.Out;
        Console.SetOut(TextWriter.Null);
        Console.SetError(TextWriter.Null);
        var all = InnerTest.In(assembly, namespaces).ToList();
        if (args.Length == 6) return Cover(all, reached, most, longest, args[5], output);
        var order = File.ReadLines(args[5]).Select(l => l.Split('\t')).Select(p => (Test: all[int.Parse(p[0], CultureInfo.InvariantCulture)], Seconds: double.Parse(p[1], CultureInfo.InvariantCulture), Ids: p[2].Split(',', StringSplitOptions.RemoveEmptyEntries).Select(int.Parse).ToHashSet()))
            .OrderBy(t => t.Seconds).ToList();
        foreach (var id in File.ReadLines(args[6]).Select(int.Parse))
        {
            alive.SetValue(null, id);
            var killed = false;
            foreach (var (test, seconds, _) in order.Where(t => t.Ids.Contains(id)))
            {
                if (Ends(test, TimeSpan.FromSeconds((seconds * 10) + 3)) is not { } passed)
                {
                    File.AppendAllText(args[7], $"{id} endless\n");
                    return 3;                               // its thread cannot be stopped: the rest is for another process
                }
                if (passed) continue;
                killed = true;
                break;
            }
            File.AppendAllText(args[7], $"{id} {(killed ? "killed" : "survived")}\n");
        }
        return 0;
    }

    /// <summary>What each test reaches while no mutant is alive; those that fail so, or take too long, are left out, though one that never comes back may still reach some.</summary>
    private static int Cover(List<InnerTest> all, FieldInfo reached, int most, double longest, string to, TextWriter output)
    {
        using var lines = new StreamWriter(to);
        var (failed, slow) = (0, 0);
        for (var i = 0; i < all.Count; i++)
        {
            var hits = new bool[most + 1];
            reached.SetValue(null, hits);
            var watch = Stopwatch.StartNew();
            var passed = Ends(all[i], TimeSpan.FromSeconds(60));
            var seconds = watch.Elapsed.TotalSeconds;
            if (passed != true) failed++;
            if (seconds > longest) slow++;
            if (passed != true || seconds > longest) continue;
            lines.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{i}\t{seconds:0.####}\t{string.Join(',', Enumerable.Range(1, most).Where(id => hits[id]))}"));
        }
        output.WriteLine($"{all.Count} cases of tests; {failed} failed without a mutant and {slow} took longer than {longest} s: left out");
        return 0;
    }

    /// <summary>Whether a test passes; null where it does not come back.</summary>
    private static bool? Ends(InnerTest test, TimeSpan within)
    {
        var passed = false;
        var thread = new Thread(() =>
        {
            try
            {
                test.Run();
                passed = true;
            }
            catch (Exception)
            {
                passed = false;
            }
        }, 64 << 20)
        { IsBackground = true };
        thread.Start();
        return thread.Join(within) ? passed : null;
    }

    private static bool Passes(InnerTest test)
    {
        try
        {
            test.Run();
            return true;
        }
        catch (Exception)
        {
            return false;
        }
    }

    private sealed class TestsContext(string tests) : AssemblyLoadContext("tests")
    {
        private readonly AssemblyDependencyResolver resolver = new(tests);

        protected override Assembly? Load(AssemblyName name) => resolver.ResolveAssemblyToPath(name) is { } path ? LoadFromAssemblyPath(path) : null;

        protected override nint LoadUnmanagedDll(string name) => resolver.ResolveUnmanagedDllToPath(name) is { } path ? LoadUnmanagedDllFromPath(path) : 0;
    }
}
