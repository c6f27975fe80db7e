using System.Diagnostics;
using System.Globalization;

namespace Closemown.Bench.Speed;

/// <summary>CPU time of whole processes on the demo book beside a program that only prints a line, on the same runtime.</summary>
internal static class ColdStart
{
    private const int Times = 9;

    /// <param name="args">The launcher, where it is not ./closemown of the present folder.</param>
    public static int Print(string[] args)
    {
        var launcher = Path.GetFullPath(args.Length > 0 ? args[0] : "closemown");
        if (!File.Exists(launcher)) return Fault($"There is no launcher at {launcher}: run this in the folder of the sources, or name it.");
        var folder = Directory.CreateTempSubdirectory("closemown-cold-").FullName;
        try
        {
            var hello = Hello(folder);
            var book = Path.Combine(folder, "book.closemown");
            Environment.SetEnvironmentVariable("CLOSEMOWN_BOOK", book);
            Environment.SetEnvironmentVariable("CLOSEMOWN_SETTINGS", Path.Combine(folder, "settings.json"));
            Ran($"'{launcher}' book import '{Path.Combine(AppContext.BaseDirectory, "demo", "ferncombe.jsonl")}'");
            var ordinary = Path.Combine(Path.GetDirectoryName(launcher)!, "artifacts", "bin", "Closemown.Cli", "release", "closemown.dll");
            (string What, string Line)[] processes =
            [
                ("a program that prints a line", $"dotnet '{hello}'"),
                ("./closemown settings --json", $"'{launcher}' settings --json"),
                ("./closemown book list --last 3", $"'{launcher}' book list --last 3"),
                ("./closemown steel --json", $"'{launcher}' steel --json"),
                ("./closemown next --json", $"'{launcher}' next --json"),
                ("the same, nothing compiled ahead", $"dotnet '{ordinary}' next --json"),
            ];
            var taken = Array.ConvertAll(processes, _ => new List<double>());
            for (var k = 0; k < Times; k++)
            {
                for (var p = 0; p < processes.Length; p++) taken[p].Add(Ran(processes[p].Line));
            }
            foreach (var times in taken) times.Sort();
            Console.WriteLine("| process | CPU ms, median | least | times the first, medians | least |\n|---|---|---|---|---|");
            for (var p = 0; p < processes.Length; p++)
            {
                var (middle, least) = (taken[p][Times / 2], taken[p][0]);
                Console.WriteLine(FormattableString.Invariant($"| {processes[p].What} | {middle:0} | {least:0} | {middle / taken[0][Times / 2]:0.0} | {least / taken[0][0]:0.0} |"));
            }
            return 0;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static string Hello(string folder)
    {
        var at = Directory.CreateDirectory(Path.Combine(folder, "hello")).FullName;
        File.WriteAllText(Path.Combine(at, "hello.csproj"), """
            <Project Sdk="Microsoft.NET.Sdk"><PropertyGroup><OutputType>Exe</OutputType><TargetFramework>net10.0</TargetFramework>
            <InvariantGlobalization>true</InvariantGlobalization></PropertyGroup></Project>
            """);
        File.WriteAllText(Path.Combine(at, "Program.cs"), "System.Console.WriteLine(\"hello\");");
        Ran($"dotnet build '{at}/hello.csproj' -c Release -v quiet -nologo -o '{at}/out'");
        return Path.Combine(at, "out", "hello.dll");
    }

    /// <summary>Runs a line of the shell; the CPU milliseconds of all it started.</summary>
    private static double Ran(string line)
    {
        var info = new ProcessStartInfo("bash", ["-c", $"TIMEFORMAT='%U %S'; time {{ {line} >/dev/null 2>&1; }}"]) { RedirectStandardError = true };
        using var process = Process.Start(info)!;
        var told = process.StandardError.ReadToEnd().Trim();
        process.WaitForExit();
        if (process.ExitCode != 0) throw new InvalidOperationException($"{line}: ended with {process.ExitCode} {told}");
        return told.Split('\n')[^1].Split(' ').Sum(s => double.Parse(s, CultureInfo.InvariantCulture)) * 1000;
    }

    private static int Fault(string text)
    {
        Console.Error.WriteLine(text);
        return 1;
    }
}
