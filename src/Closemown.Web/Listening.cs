using System.Net;
using Closemown.Serving;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.AspNetCore.Server.Kestrel.Https;

namespace Closemown.Web;

/// <summary>The sockets, and where they turned out to be.</summary>
internal sealed class Listening
{
    /// <summary>How long a visitor may take over the header of a request, or over agreeing on keys.</summary>
    private static readonly TimeSpan HeaderTime = TimeSpan.FromSeconds(5);

    /// <summary>How long a connection may say nothing between requests.</summary>
    private static readonly TimeSpan QuietTime = TimeSpan.FromSeconds(75);

    private readonly List<(Door Door, ListenOptions Listen, bool Secure)> sockets = [];

    // By the machine's own running, not by the clock that tests put on.
    private readonly Dictionary<Door, DoorKeeper> keepers = Enum.GetValues<Door>().ToDictionary(d => d, d => new DoorKeeper(DoorKeeper.RoomOf(d), TimeProvider.System));

    /// <summary>Opens the doors: this machine's always; the network's where it is asked for, one port up with https; plain http for trusting, two up.</summary>
    public void Open(KestrelServerOptions kestrel, ServeOptions options, Network? network)
    {
        kestrel.AddServerHeader = false;
        SetLimits(kestrel.Limits, options.Limits);
        Add(kestrel, IPAddress.Loopback, options.Port, Door.Machine, null);
        foreach (var address in network?.Addresses ?? [])
        {
            Add(kestrel, address, Up(options.Port, 1), Door.Network, network!.Leaf);
            if (network.Leaf is not null) Add(kestrel, address, Up(options.Port, 2), Door.Trust, null);
        }
    }

    /// <summary>The addresses of a door, once the server runs.</summary>
    public IEnumerable<string> Of(Door door) => sockets.Where(s => s.Door == door).Select(s => $"http{(s.Secure ? "s" : "")}://{s.Listen.IPEndPoint}/");

    private static void SetLimits(KestrelServerLimits limits, ServeLimits told)
    {
        limits.MaxRequestBodySize = told.RequestBytes;
        // The keepers of the doors count; a connection over the limit here would be refused whoever it is.
        limits.MaxConcurrentConnections = null;
        limits.RequestHeadersTimeout = HeaderTime;
        limits.KeepAliveTimeout = QuietTime;
        // A body, or the reading of an answer, that comes slower than this is broken off after five seconds.
        limits.MinRequestBodyDataRate = new MinDataRate(bytesPerSecond: 240, gracePeriod: HeaderTime);
        limits.MinResponseDataRate = new MinDataRate(bytesPerSecond: 240, gracePeriod: HeaderTime);
    }

    private void Add(KestrelServerOptions kestrel, IPAddress address, int port, Door door, LeafKeeper? leaf) => kestrel.Listen(address, port, listen =>
    {
        // Before the keys are agreed on: whoever never does is counted too.
        keepers[door].Watch(listen);
        if (leaf is not null)
        {
            listen.UseHttps(new HttpsConnectionAdapterOptions { ServerCertificateSelector = (_, _) => leaf.Now, HandshakeTimeout = HeaderTime });
        }
        listen.Mark(door);
        sockets.Add((door, listen, leaf is not null));
    });

    private static int Up(int port, int by) => port == 0 ? 0 : port + by;
}
