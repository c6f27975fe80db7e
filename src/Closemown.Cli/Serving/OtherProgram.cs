using System.ComponentModel;
using System.Diagnostics;
using System.Runtime.InteropServices;

namespace Closemown.Cli;

/// <summary>Goes over into another .NET program, so that keys, signals and the exit code are its own.</summary>
internal static class OtherProgram
{
    /// <summary>Becomes the program where the system can do that, else runs it and waits.</summary>
    /// <param name="program">The full path of its .dll.</param>
    /// <param name="words">The words it is started with.</param>
    /// <returns>Its exit code.</returns>
    public static int Become(string program, IReadOnlyList<string> words)
    {
        var host = Environment.ProcessPath is { } mine && Path.GetFileNameWithoutExtension(mine) == "dotnet" ? mine : "dotnet";
        string[] typed = ["exec", program, .. words];
        if (!OperatingSystem.IsWindows())
        {
            _ = Native.ExecVP(host, [host, .. typed, null]);            // comes back only where it cannot
        }
        return Run(host, typed);
    }

    private static int Run(string host, string[] typed)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo(host, typed))!;
            // A key reaches both; a signal only this one, which passes it on by ending the other.
            using var interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, c => c.Cancel = true);
            using var end = PosixSignalRegistration.Create(PosixSignal.SIGTERM, c =>
            {
                c.Cancel = true;
                process.Kill();
            });
            process.WaitForExit();
            return process.ExitCode;
        }
        catch (Win32Exception e)
        {
            throw CliFault.Refused($"The program that serves could not be started: {e.Message}.", "Check that dotnet is on the PATH.");
        }
    }

    private static class Native
    {
        // LPStr is UTF-8 here: this is never called on Windows.
        [DllImport("libc", EntryPoint = "execvp", SetLastError = true)]
        [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
        public static extern int ExecVP([MarshalAs(UnmanagedType.LPUTF8Str)] string file, [MarshalAs(UnmanagedType.LPArray, ArraySubType = UnmanagedType.LPStr)] string?[] words);
    }
}
