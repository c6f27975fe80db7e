using System.Net;
using Closemown.Serving;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.AspNetCore.Server.Kestrel.Https;

namespace Closemown.Web;

/// <summary>The sockets, and where they turned out to be.</summary>
internal sealed class Listening
{
    private readonly List<(Door Door, ListenOptions Listen, bool Secure)> sockets = [];

    /// <summary>Opens the doors: this machine's always; the network's where it is asked for, one port up with https; plain http for trusting, two up.</summary>
    public void Open(KestrelServerOptions kestrel, ServeOptions options, Network? network)
    {
        kestrel.AddServerHeader = false;
        kestrel.Limits.MaxRequestBodySize = options.Limits.RequestBytes;
        kestrel.Limits.MaxConcurrentConnections = 256;
        Add(kestrel, IPAddress.Loopback, options.Port, Door.Machine, null);
        foreach (var address in network?.Addresses ?? [])
        {
            Add(kestrel, address, Up(options.Port, 1), Door.Network, network!.Leaf);
            if (network.Leaf is not null) Add(kestrel, address, Up(options.Port, 2), Door.Trust, null);
        }
    }

    /// <summary>The addresses of a door, once the server runs.</summary>
    public IEnumerable<string> Of(Door door) => sockets.Where(s => s.Door == door).Select(s => $"http{(s.Secure ? "s" : "")}://{s.Listen.IPEndPoint}/");

    private void Add(KestrelServerOptions kestrel, IPAddress address, int port, Door door, LeafKeeper? leaf) => kestrel.Listen(address, port, listen =>
    {
        if (leaf is not null) listen.UseHttps(new HttpsConnectionAdapterOptions { ServerCertificateSelector = (_, _) => leaf.Now });
        listen.Mark(door);
        sockets.Add((door, listen, leaf is not null));
    });

    private static int Up(int port, int by) => port == 0 ? 0 : port + by;
}
