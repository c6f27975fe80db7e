using SharpFuzz;

namespace Closemown.Bench.Fuzzing;

/// <summary>A copy of this program whose readers note which branches they take.</summary>
internal static class Instrumented
{
    /// <summary>The assemblies that read what comes from outside, and what they hand it to.</summary>
    private static readonly string[] Assemblies =
        ["Closemown.Quantities", "Closemown.Entries", "Closemown.Typing", "Closemown.Weather", "Closemown.Book", "Closemown.Pipe", "Closemown.Advice", "Closemown.Turf", "Closemown.Height", "Closemown.Steel", "Closemown.Web", "closemown"];

    /// <summary>Copies a folder and instruments the copies.</summary>
    /// <returns>The copied program.</returns>
    public static string Make(string from, string to)
    {
        if (Directory.Exists(to)) Directory.Delete(to, recursive: true);
        foreach (var file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            var copy = Path.Combine(to, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }
        foreach (var name in Assemblies) Fuzzer.Instrument(Path.Combine(to, name + ".dll"), _ => true, Options.Value);
        return Path.Combine(to, Path.GetFileName(typeof(Instrumented).Assembly.Location));
    }
}
