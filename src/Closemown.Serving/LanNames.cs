using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;

namespace Closemown.Serving;

/// <summary>What this machine is called, and where it is found, on the local network.</summary>
public static class LanNames
{
    /// <summary>A machine's name as it may stand in an address: its first part, in small letters, digits and hyphens.</summary>
    public static string Plain(string hostName)
    {
        ArgumentNullException.ThrowIfNull(hostName);
        var plain = string.Concat(hostName.Split('.')[0].ToLowerInvariant().Where(c => char.IsAsciiLetterOrDigit(c) || c == '-')).Trim('-');
        return plain.Length == 0 ? "closemown" : plain;
    }

    /// <summary>The names: the machine's own, and the same under .local.</summary>
    public static IReadOnlyList<string> Of(string hostName) => [Plain(hostName), Plain(hostName) + ".local"];

    /// <summary>The IPv4 addresses of this machine's running network interfaces that are of a private network.</summary>
    /// <remarks>Not those that a carrier's customers share (100.64.0.0/10, RFC 6598): strangers may be behind them.</remarks>
    public static IReadOnlyList<IPAddress> Addresses() =>
    [
        .. NetworkInterface.GetAllNetworkInterfaces()
            .Where(i => i.OperationalStatus == OperationalStatus.Up && i.NetworkInterfaceType is not NetworkInterfaceType.Loopback)
            .SelectMany(i => i.GetIPProperties().UnicastAddresses)
            .Select(a => a.Address)
            .Where(a => a.AddressFamily == AddressFamily.InterNetwork && NameLimits.IsPrivate(a))
            .Distinct(),
    ];
}
