using Microsoft.Playwright;

namespace Closemown.Browser.Tests;

/// <summary>A slow line and a slow phone, played by Chromium itself.</summary>
/// <param name="Name">What people read.</param>
/// <param name="LatencyMs">From sending a request to the first byte of its answer, added to what the server takes. The setting up of a connection is not slowed.</param>
/// <param name="DownKbit">Kbit/s (1,024 bit) towards the phone.</param>
/// <param name="UpKbit">Kbit/s (1,024 bit) from it.</param>
/// <param name="CpuSlower">How many times slower the page's processor is.</param>
internal sealed record SlowLine(string Name, double LatencyMs, double DownKbit, double UpKbit, double CpuSlower)
{
    /// <summary>Slow 4G: 150 ms, 1.6 Mbit/s down, 750 kbit/s up, processor 4 times slower.</summary>
    /// <remarks>Source: mobileSlow4G in models/trace/lantern/simulation/Constants.ts of chrome-devtools-frontend 1.0.1525561; the same in docs/throttling.md of Lighthouse.</remarks>
    public static SlowLine Slow4G { get; } = new("slow 4G", 150, 1.6 * 1024, 750, 4);

    /// <summary>The same as that source has it applied to whole requests, where one request stands for several ways to and fro: latency times 3.75, throughput times 0.9.</summary>
    public static SlowLine Slow4GByRequest { get; } = Slow4G with { Name = "slow 4G, as applied to requests", LatencyMs = 150 * 3.75, DownKbit = 1.6 * 1024 * 0.9, UpKbit = 750 * 0.9 };

    public async Task ApplyTo(ICDPSession session)
    {
        await session.SendAsync("Network.emulateNetworkConditions", new()
        {
            ["offline"] = false,
            ["latency"] = LatencyMs,
            ["downloadThroughput"] = DownKbit * 1024 / 8,
            ["uploadThroughput"] = UpKbit * 1024 / 8,
        });
        await session.SendAsync("Emulation.setCPUThrottlingRate", new() { ["rate"] = CpuSlower });
    }
}
