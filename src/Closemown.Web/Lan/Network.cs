using System.Net;
using System.Net.Sockets;
using Closemown.Serving;

namespace Closemown.Web;

/// <summary>How this server is found on the local network, and who it lets in there.</summary>
internal sealed class Network : IDisposable
{
    private Network(ServeOptions options, string folder, IReadOnlyList<IPAddress> addresses, TimeProvider time)
    {
        Addresses = addresses;
        var host = Environment.MachineName;
        Names = LanNames.Of(host);
        Devices = new(folder, time);
        Code = new(folder, time);
        if (options.PlainHttp) return;
        var authority = Authority.Open(folder, host, addresses, time.GetUtcNow());
        (Fingerprint, ForDevices, News) = (authority.Fingerprint, authority.ForDevices, authority.News);
        Leaf = new(authority, [.. Names, "localhost"], [.. addresses, IPAddress.Loopback], time);
    }

    public IReadOnlyList<IPAddress> Addresses { get; }

    public IReadOnlyList<string> Names { get; }

    public DeviceList Devices { get; }

    public PairingCode Code { get; }

    /// <summary>The certificate to serve with; null on plain http.</summary>
    public LeafKeeper? Leaf { get; }

    public string Fingerprint { get; } = "";

    public byte[] ForDevices { get; } = [];

    /// <summary>Whether the authority was made anew, and why.</summary>
    public AuthorityNews News { get; }

    /// <summary>What a request's Host may be.</summary>
    public IEnumerable<string> Hosts => Names.Concat(Addresses.Select(a => a.AddressFamily == AddressFamily.InterNetworkV6 ? $"[{a}]" : a.ToString()));

    /// <exception cref="ServeFault">There is no address to serve at, or no folder to keep devices in.</exception>
    public static Network Open(ServeOptions options, TimeProvider time)
    {
        if (options.Folder is null) throw new ServeFault("This machine names no folder for settings, where devices would be kept.", "Set CLOSEMOWN_SETTINGS to the path of a file.");
        var addresses = new List<IPAddress>();
        foreach (var told in options.Addresses)
        {
            if (!IPAddress.TryParse(told, out var address)) throw new ServeFault($"\"{told}\" is no address.", "Give one as 192.168.1.20.");
            if (!NameLimits.IsPrivate(address) && !NameLimits.Shared.Contains(address)) throw new ServeFault($"{told} is not an address of a private network: this server does not go out on the internet.", "Give a private one, as 192.168.1.20.");
            addresses.Add(address);
        }
        if (addresses.Count == 0) addresses.AddRange(LanNames.Addresses());
        return addresses.Count > 0 ? new Network(options, options.Folder, addresses, time)
            : throw new ServeFault("This machine has no address on a private network.", "Join one, or name the address with --address.");
    }

    public void Dispose() => Leaf?.Dispose();
}

/// <summary>Why a server cannot start, and what to do.</summary>
internal sealed class ServeFault(string message, string remedy) : Exception(message)
{
    public string Remedy { get; } = remedy;
}
