using System.Globalization;

namespace Closemown.Browser.Tests;

/// <summary>Weight and speed of each page, opened cold on a phone over a slow line.</summary>
internal static class FirstViewRun
{
    private const double WantedBytes = 150_000;
    private const double WantedMs = 1000;

    /// <param name="args">How many times each page is opened; 5 where nothing is said.</param>
    public static async Task<int> Print(string[] args)
    {
        if (!TryTimes(args, out var times))
        {
            await Console.Error.WriteLineAsync("After first-view say how often each page is to be opened, 1 to 1000; 5 where nothing is said.");
            return 2;
        }
        await using var chromium = await Chromium.Start();
        await using var server = await DemoServer.Start();
        var address = new Uri(server.Server.Address);
        foreach (var line in (SlowLine[])[SlowLine.Slow4G, SlowLine.Slow4GByRequest])
        {
            Console.WriteLine(FormattableString.Invariant($"{line.Name}: {line.LatencyMs:0} ms, {line.DownKbit:0} kbit/s down, {line.UpKbit:0} up, processor {line.CpuSlower:0} times slower; phone {ViewSize.Phone.WidthPx} x {ViewSize.Phone.HeightPx}; medians of {times}"));
            Console.WriteLine("| page | KB | requests | first paint, ms | loaded | interactive |\n|---|---|---|---|---|---|");
            foreach (var page in SitePages.All)
            {
                // The server's first answer compiles its code, which no line makes slower or faster.
                await server.Machine.GetStringAsync(page.Path);
                var views = new List<FirstView>();
                for (var n = 0; n < times; n++) views.Add(await FirstView.Of(chromium.Browser, address, page.Path, line));
                var median = FirstView.Median(views);
                Console.WriteLine(FormattableString.Invariant($"| {page.Path} | {median.Bytes / 1000:0.0}{Missed(median.Bytes, WantedBytes)} | {median.Requests:0} | {median.FirstPaintMs:0} | {median.LoadMs:0} | {median.InteractiveMs:0}{Missed(median.InteractiveMs, WantedMs)} |"));
            }
            Console.WriteLine(FormattableString.Invariant($"wanted: at most {WantedBytes / 1000:0} KB, interactive within {WantedMs:0} ms\n"));
        }
        return 0;
    }

    private static string Missed(double got, double wanted) => got > wanted ? " (missed)" : "";

    private static bool TryTimes(string[] args, out int times)
    {
        times = 5;
        return args.Length == 0 || args.Length == 1 && int.TryParse(args[0], NumberStyles.None, CultureInfo.InvariantCulture, out times) && times is >= 1 and <= 1000;
    }
}
