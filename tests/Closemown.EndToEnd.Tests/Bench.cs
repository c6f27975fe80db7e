using System.Diagnostics;
using System.Text;
using System.Text.Json.Nodes;

namespace Closemown.EndToEnd.Tests;

/// <summary>What a run of the program gave back.</summary>
public sealed record Ran(int Exit, string Out, string Error)
{
    /// <summary>The one line of JSON on standard output.</summary>
    public JsonObject Json => JsonNode.Parse(Out)!.AsObject();

    public string[] Lines => Out.Split('\n', StringSplitOptions.RemoveEmptyEntries);
}

/// <summary>The program with a book, settings and home folder of its own in a temporary folder.</summary>
/// <remarks>As ./test compiled it ahead, where it did, else as it was built.</remarks>
public sealed class Bench : IDisposable
{
    private static readonly string[] Program = Environment.GetEnvironmentVariable("CLOSEMOWN_TEST_AHEAD") is { Length: > 0 } ahead
        ? ["exec", "--fx-version", Path.GetFileName(File.ReadLines(Path.Combine(ahead, "framework")).First()), Path.Combine(ahead, "closemown.dll")]
        : [Path.Combine(AppContext.BaseDirectory, "closemown.dll")];

    public string Folder { get; } = Directory.CreateTempSubdirectory("closemown-test-").FullName;

    public string Book => Path.Combine(Folder, "book.closemown");

    public string Settings => Path.Combine(Folder, "settings.json");

    /// <summary>The folder of the sources, where they are at hand.</summary>
    public static string Root { get; } = FindRoot();

    public Ran Run(params string[] args) => Run(args, null, null);

    /// <summary>Runs the program once.</summary>
    /// <param name="args">What is typed.</param>
    /// <param name="input">Standard input; null for none.</param>
    /// <param name="more">Environment variables to set, or with null to take out.</param>
    public Ran Run(string[] args, string? input, Dictionary<string, string?>? more) => Start("dotnet", [.. Program, .. args], input, more);

    public Ran Start(string file, string[] args, string? input, Dictionary<string, string?>? more, double minutes = 2)
    {
        using var process = Process.Start(Info(file, args, more))!;
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEndAsync();
        if (input is not null) process.StandardInput.Write(input);
        process.StandardInput.Close();
        if (!process.WaitForExit(TimeSpan.FromMinutes(minutes)))
        {
            process.Kill(entireProcessTree: true);
            throw new TimeoutException($"{string.Join(' ', args)} did not end within {minutes} minutes.");
        }
        return new Ran(process.ExitCode, output.Result, error.Result);
    }

    /// <summary>Starts the program, and leaves it running.</summary>
    public Process Begin(params string[] args) => Process.Start(Info("dotnet", [.. Program, .. args], null))!;

    /// <summary>Starts another program in the same surroundings, and leaves it running.</summary>
    public Process BeginOther(string file, params string[] args) => Process.Start(Info(file, args, null))!;

    private ProcessStartInfo Info(string file, string[] args, Dictionary<string, string?>? more)
    {
        var info = new ProcessStartInfo(file, args)
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = Encoding.UTF8,
            StandardErrorEncoding = Encoding.UTF8,
            WorkingDirectory = Folder,
        };
        foreach (var name in info.Environment.Keys.Where(k => k.StartsWith("CLOSEMOWN_", StringComparison.Ordinal) || k == "NO_COLOR").ToList()) info.Environment.Remove(name);
        info.Environment["CLOSEMOWN_BOOK"] = Book;
        info.Environment["CLOSEMOWN_SETTINGS"] = Settings;
        info.Environment["TZ"] = "UTC";
        foreach (var (name, value) in more ?? [])
        {
            if (value is null) info.Environment.Remove(name);
            else info.Environment[name] = value;
        }
        return info;
    }

    public void Dispose() => Directory.Delete(Folder, recursive: true);

    private static string FindRoot()
    {
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            if (File.Exists(Path.Combine(at.FullName, "Closemown.slnx"))) return at.FullName;
        }
        throw new InvalidOperationException("The tests do not run inside the folder of the sources.");
    }
}
