using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using System.Text.Json.Nodes;

namespace Closemown.EndToEnd.Tests;

/// <summary>The program serving, as a person starts it; ended when done with.</summary>
public sealed class Served : IDisposable
{
    private readonly Process process;
    private readonly Task<string> errors;

    private Served(Process process, JsonObject said)
    {
        (this.process, Said) = (process, said);
        errors = process.StandardError.ReadToEndAsync();
        Client = new HttpClient(new SocketsHttpHandler { AllowAutoRedirect = false }) { BaseAddress = new((string)said["address"]!) };
    }

    /// <summary>What it said when it was ready.</summary>
    public JsonObject Said { get; }

    public HttpClient Client { get; }

    /// <summary>Starts it with --json, and waits until it says where it is.</summary>
    public static Served Start(Process process)
    {
        ArgumentNullException.ThrowIfNull(process);
        process.StandardInput.Close();
        var line = process.StandardOutput.ReadLine();
        if (line is null) throw new InvalidOperationException($"It did not start: {process.StandardError.ReadToEnd()}");
        return new(process, JsonNode.Parse(line)!["serve"]!.AsObject());
    }

    /// <summary>Whether it ignores a signal, where the system tells (Linux: SigIgn, a bit for each signal from 1).</summary>
    public bool Ignores(int signal)
    {
        var status = $"/proc/{process.Id}/status";
        if (!File.Exists(status)) return false;
        var ignored = File.ReadLines(status).First(l => l.StartsWith("SigIgn:", StringComparison.Ordinal)).Split('\t')[1];
        return (ulong.Parse(ignored, NumberStyles.HexNumber, CultureInfo.InvariantCulture) >> (signal - 1) & 1) == 1;
    }

    /// <summary>Ends it by a signal.</summary>
    /// <returns>The exit code, and all it wrote to standard error.</returns>
    public (int Exit, string Error) End(int signal)
    {
        if (Kill(process.Id, signal) != 0) throw new InvalidOperationException("The signal could not be sent.");
        if (!process.WaitForExit(30_000)) throw new TimeoutException("It did not end within half a minute.");
        return (process.ExitCode, errors.Result);
    }

    public void Dispose()
    {
        Client.Dispose();
        if (!process.HasExited) process.Kill(entireProcessTree: true);
        process.Dispose();
    }

    [DllImport("libc", EntryPoint = "kill", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Kill(int id, int signal);
}
