namespace Closemown.Bench.Fuzzing;

/// <summary>Where inputs that crashed are kept.</summary>
internal static class CrashFolder
{
    /// <summary>Keeps an input, and what was said of it beside it.</summary>
    /// <returns>The file of the input.</returns>
    public static string Keep(string folder, string target, string name, byte[] input, string told)
    {
        var crashes = Directory.CreateDirectory(Path.Combine(folder, "crashes")).FullName;
        var file = Path.Combine(crashes, $"{target}-{name}");
        File.WriteAllBytes(file, input);
        File.WriteAllText(file + ".txt", told + "\n");
        return file;
    }
}
