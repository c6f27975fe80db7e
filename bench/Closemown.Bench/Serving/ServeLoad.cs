using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace Closemown.Bench.Serving;

/// <summary>
/// A mixed load on the server over the demo's book: pages, their .json twins, advice, and now and then an entry, after which everything is
/// reckoned anew; with <c>--idle</c> and <c>--slow</c> so many connections of others beside it.
/// </summary>
/// <remarks>Requests go out by the clock, whether or not earlier ones are answered, and each is timed from when it was due. The server has one core, the client the rest.</remarks>
internal static class ServeLoad
{
    private static readonly string[] Twins = ["/today.json", "/steel.json", "/height.json", "/turf.json", "/plan.json", "/book.json?limit=50"];

    public static int Print(string[] args)
    {
        double Told(string name, double usual) => Array.IndexOf(args, name) is >= 0 and var at && at + 1 < args.Length ? double.Parse(args[at + 1], CultureInfo.InvariantCulture) : usual;
        var (seconds, rate, apart) = (Told("--seconds", 60), Told("--rate", 50), Told("--entry-every", 30));
        var (idle, slow) = ((int)Told("--idle", 0), (int)Told("--slow", 0));
        var launcher = Path.GetFullPath("closemown");
        if (!File.Exists(launcher))
        {
            Console.Error.WriteLine("Run this in the folder of the sources.");
            return 1;
        }
        var folder = Directory.CreateTempSubdirectory("closemown-load-").FullName;
        Environment.SetEnvironmentVariable("CLOSEMOWN_SETTINGS", Path.Combine(folder, "settings.json"));
        Environment.SetEnvironmentVariable("CLOSEMOWN_REQUESTS_PER_SECOND", "10000");
        Environment.SetEnvironmentVariable("TMPDIR", folder);
        var pinned = File.Exists("/usr/bin/taskset") && Environment.ProcessorCount > 1;
        try
        {
            // As it was built, without what ./closemown compiles ahead.
            string[] program = args.Contains("--built") ? ["dotnet", Path.GetFullPath("artifacts/bin/Closemown.Cli/release/closemown.dll")] : [launcher];
            string[] words = [.. pinned ? ["/usr/bin/taskset", "-c", "0"] : Array.Empty<string>(), .. program, "demo", "--serve", "--port", "0", "--json"];
            using var server = ServerRun.Start(words[0], words[1..]);
            if (pinned && OperatingSystem.IsLinux()) Process.GetCurrentProcess().ProcessorAffinity = (nint)((1L << Environment.ProcessorCount) - 2);
            Run(server, seconds, rate, apart, pinned, idle, slow).Wait();
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
        return 0;
    }

    private static async Task Run(ServerRun server, double seconds, double rate, double apart, bool pinned, int idle, int slow)
    {
        using var client = new HttpClient(new SocketsHttpHandler { MaxConnectionsPerServer = 32 }) { BaseAddress = server.Said() };
        using var siege = Siege.Of(client.BaseAddress, idle, slow);
        // Warm: the runtime compiles what is hot while the first thousands of requests come in.
        await Sent(client, Math.Min(20, seconds), rate, apart, 0);
        var (memory, cpu) = (server.ResidentMb, server.CpuS);
        var answers = await Sent(client, seconds, rate, apart, 1_000_000);
        Console.WriteLine(FormattableString.Invariant($"{seconds:0} s, {rate:0} requests a second, an entry every {apart:0.#} s; the server {(pinned ? "on one core" : "not held to one core")}; {answers.Count} requests, {answers.Count(a => !a.Ok)} errors"));
        Console.WriteLine(FormattableString.Invariant($"resident MB: {memory:0} at the start, {server.ResidentMb:0} at the end; the core was busy {100 * (server.CpuS - cpu) / seconds:0} % of the time"));
        if (idle + slow > 0)
        {
            Console.WriteLine($"beside it {idle} idle and {slow} slow connections, opened anew when closed: {siege.Opened} in all, {siege.Refused} refused");
        }
        foreach (var error in answers.Where(a => !a.Ok).GroupBy(a => (a.Kind, a.Fault)).OrderByDescending(g => g.Count()).Take(10))
        {
            Console.WriteLine($"error: {error.Count()} of {error.Key.Kind}: {error.Key.Fault}");
        }
        Console.WriteLine("| | requests | p50 ms | p95 | p99 | most |\n|---|---|---|---|---|---|");
        foreach (var group in answers.GroupBy(a => a.Kind).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => (g.Key, Ms: g.Select(a => a.Ms))).Prepend((Key: "all", Ms: answers.Select(a => a.Ms))))
        {
            double[] ms = [.. group.Ms.Order()];
            double At(double p) => ms[Math.Min(ms.Length - 1, (int)(p * ms.Length))];
            Console.WriteLine(FormattableString.Invariant($"| {group.Key} | {ms.Length} | {At(0.5):0.0} | {At(0.95):0.0} | {At(0.99):0.0} | {ms[^1]:0.0} |"));
        }
    }

    private static async Task<List<Answered>> Sent(HttpClient client, double seconds, double rate, double apart, int first)
    {
        var start = Stopwatch.GetTimestamp();
        var all = (int)(seconds * rate);
        var everyNth = (int)Math.Round(apart * rate);
        var sent = new List<Task<Answered>>(all);
        for (var n = 0; n < all; n++)
        {
            var due = TimeSpan.FromSeconds(n / rate);
            while (Stopwatch.GetElapsedTime(start) is var now && now < due) await Task.Delay(due - now > TimeSpan.FromMilliseconds(2) ? TimeSpan.FromMilliseconds(1) : TimeSpan.Zero);
            sent.Add(One(client, n, everyNth > 0 && n % everyNth == everyNth - 1, start, due, first));
        }
        return [.. await Task.WhenAll(sent)];
    }

    private static async Task<Answered> One(HttpClient client, int n, bool entry, long start, TimeSpan due, int first)
    {
        var kind = entry ? "entry" : n % 10 < 5 ? "page" : n % 10 < 8 ? "json" : "advice";
        try
        {
            using var answer = kind switch
            {
                "entry" => await client.PostAsync("/entries", new StringContent($$"""{"kind":"mow","hours":0.2,"unit":"ten-blade","area":"green","note":"load {{first + n}}"}""", Encoding.UTF8, "application/jsonl")),
                "page" => await client.GetAsync("/"),
                "json" => await client.GetAsync(Twins[n / 10 % Twins.Length]),
                _ => await client.PostAsync("/ask", new StringContent("""{"ask":"next","unit":"ten-blade"}""", Encoding.UTF8, "application/json")),
            };
            var text = await answer.Content.ReadAsStringAsync();
            var ok = answer.IsSuccessStatusCode && !text.StartsWith("{\"ok\":false", StringComparison.Ordinal);
            return new(kind, Since(start, due), ok, ok ? "" : $"{(int)answer.StatusCode} {text[..Math.Min(text.Length, 120)]}");
        }
        catch (Exception e) when (e is HttpRequestException or IOException or OperationCanceledException)
        {
            return new(kind, Since(start, due), false, $"{e.GetType().Name} {e.InnerException?.Message ?? e.Message}");
        }
    }

    private static double Since(long start, TimeSpan due) => (Stopwatch.GetElapsedTime(start) - due).TotalMilliseconds;

    private sealed record Answered(string Kind, double Ms, bool Ok, string Fault);
}
