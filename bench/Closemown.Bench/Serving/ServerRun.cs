using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text.Json.Nodes;

namespace Closemown.Bench.Serving;

/// <summary>A server started as a process of its own, and ended when done with.</summary>
internal sealed class ServerRun : IDisposable
{
    private readonly Process process;

    private ServerRun(Process process) => this.process = process;

    /// <summary>The least that the system calls this process's resident memory, MB.</summary>
    public double ResidentMb => File.ReadLines($"/proc/{process.Id}/status").Where(l => l.StartsWith("VmRSS:", StringComparison.Ordinal))
        .Select(l => double.Parse(l.Split(' ', StringSplitOptions.RemoveEmptyEntries)[1], CultureInfo.InvariantCulture) / 1024).FirstOrDefault();

    /// <summary>CPU seconds it has taken.</summary>
    public double CpuS
    {
        get
        {
            process.Refresh();
            return process.TotalProcessorTime.TotalSeconds;
        }
    }

    public static ServerRun Start(string file, IEnumerable<string> words)
    {
        var info = new ProcessStartInfo(file, words) { RedirectStandardOutput = true, RedirectStandardInput = true };
        return new(Process.Start(info)!);
    }

    /// <summary>The address that a server started with --json says.</summary>
    public Uri Said() => new((string)JsonNode.Parse(process.StandardOutput.ReadLine() ?? throw new InvalidOperationException("The server did not start."))!["serve"]!["address"]!);

    /// <summary>Waits until an address answers.</summary>
    public static async Task Ready(HttpClient client, string path)
    {
        while (true)
        {
            try
            {
                using var answer = await client.GetAsync(path);
                if (answer.IsSuccessStatusCode) return;
            }
            catch (HttpRequestException)
            {
                await Task.Delay(2);
            }
        }
    }

    public static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    public void Dispose()
    {
        if (!process.HasExited) process.Kill();
        process.WaitForExit();
        process.Dispose();
    }
}
