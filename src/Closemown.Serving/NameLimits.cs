using System.Formats.Asn1;
using System.Net;
using System.Security.Cryptography.X509Certificates;

namespace Closemown.Serving;

/// <summary>Name constraints: what an authority may speak for, so that whoever trusts it trusts it for nothing on the internet.</summary>
/// <remarks>RFC 5280, 4.2.1.10: permitted subtrees of dNSName (a name and all below it) and iPAddress (address and mask).</remarks>
public static class NameLimits
{
    private const string Oid = "2.5.29.30";
    private static readonly Asn1Tag Permitted = new(TagClass.ContextSpecific, 0, isConstructed: true);
    private static readonly Asn1Tag Dns = new(TagClass.ContextSpecific, 2);
    private static readonly Asn1Tag Ip = new(TagClass.ContextSpecific, 7);

    /// <summary>
    /// Addresses that are no one's on the internet: RFC 1918, loopback, link-local (RFC 3927), documentation (RFC 5737); for IPv6 loopback,
    /// ULA (RFC 4193), link-local.
    /// </summary>
    public static IReadOnlyList<IPNetwork> Private { get; } =
    [
        IPNetwork.Parse("10.0.0.0/8"), IPNetwork.Parse("172.16.0.0/12"), IPNetwork.Parse("192.168.0.0/16"), IPNetwork.Parse("127.0.0.0/8"),
        IPNetwork.Parse("169.254.0.0/16"), IPNetwork.Parse("192.0.2.0/24"),
        IPNetwork.Parse("::1/128"), IPNetwork.Parse("fc00::/7"), IPNetwork.Parse("fe80::/10"),
    ];

    /// <summary>Shared by the customers of a carrier (RFC 6598): not the internet, and not private either. Only where a person names one.</summary>
    public static IPNetwork Shared { get; } = IPNetwork.Parse("100.64.0.0/10");

    /// <summary>Each machine's own.</summary>
    private static IReadOnlyList<IPNetwork> Loopback { get; } = [IPNetwork.Parse("127.0.0.0/8"), IPNetwork.Parse("::1/128")];

    /// <summary>The extension that permits these names, these addresses and loopback, and nothing else.</summary>
    public static X509Extension Make(IEnumerable<string> names, IEnumerable<IPAddress> addresses)
    {
        ArgumentNullException.ThrowIfNull(names);
        ArgumentNullException.ThrowIfNull(addresses);
        var writer = new AsnWriter(AsnEncodingRules.DER);
        using (writer.PushSequence())
        using (writer.PushSequence(Permitted))
        {
            foreach (var name in names)
            {
                using (writer.PushSequence()) writer.WriteCharacterString(UniversalTagNumber.IA5String, name, Dns);
            }
            foreach (var network in Loopback.Concat(addresses.Where(a => !IPAddress.IsLoopback(a)).Distinct().Select(Alone)))
            {
                using (writer.PushSequence()) writer.WriteOctetString([.. network.BaseAddress.GetAddressBytes(), .. Mask(network)], Ip);
            }
        }
        return new X509Extension(Oid, writer.Encode(), critical: true);
    }

    /// <summary>The networks an authority's certificate permits.</summary>
    public static IReadOnlyList<IPNetwork> NetworksOf(X509Certificate2 authority)
    {
        var networks = new List<IPNetwork>();
        foreach (var tree in Trees(authority))
        {
            if (!tree.PeekTag().HasSameClassAndValue(Ip)) continue;
            var bytes = tree.ReadOctetString(Ip).AsSpan();
            var half = bytes.Length / 2;
            var length = 0;
            foreach (var part in bytes[half..]) length += System.Numerics.BitOperations.PopCount(part);
            networks.Add(new IPNetwork(new IPAddress(bytes[..half]), length));
        }
        return networks;
    }

    /// <summary>Whether an authority may speak for others than one machine: for every name under .local, or for a whole network.</summary>
    public static bool IsBroad(X509Certificate2 authority) =>
        NamesOf(authority) is not { Count: > 0 } names
        || names.Any(n => n.Equals("local", StringComparison.OrdinalIgnoreCase))
        || NetworksOf(authority).Except(Loopback).Any(n => n.PrefixLength < n.BaseAddress.GetAddressBytes().Length * 8);

    /// <summary>The names an authority's certificate permits.</summary>
    public static IReadOnlyList<string> NamesOf(X509Certificate2 authority) =>
    [
        .. Trees(authority).Where(t => t.PeekTag().HasSameClassAndValue(Dns)).Select(t => t.ReadCharacterString(UniversalTagNumber.IA5String, Dns)),
    ];

    /// <summary>Whether a name is one of these, or lies below one.</summary>
    public static bool Permits(IReadOnlyList<string> names, string name) =>
        names.Any(n => name.Equals(n, StringComparison.OrdinalIgnoreCase) || name.EndsWith("." + n, StringComparison.OrdinalIgnoreCase));

    /// <summary>Whether an address lies in one of these networks.</summary>
    public static bool Permits(IReadOnlyList<IPNetwork> networks, IPAddress address) => networks.Any(n => n.Contains(address));

    /// <summary>Whether an address is of a private network.</summary>
    public static bool IsPrivate(IPAddress address) => Permits(Private, address);

    private static IEnumerable<AsnReader> Trees(X509Certificate2 authority)
    {
        ArgumentNullException.ThrowIfNull(authority);
        if (authority.Extensions.FirstOrDefault(e => e.Oid?.Value == Oid) is not { } extension) yield break;
        var trees = new AsnReader(extension.RawData, AsnEncodingRules.DER).ReadSequence().ReadSequence(Permitted);
        while (trees.HasData) yield return trees.ReadSequence();
    }

    private static IPNetwork Alone(IPAddress address) => new(address, address.GetAddressBytes().Length * 8);

    private static byte[] Mask(IPNetwork network)
    {
        var mask = new byte[network.BaseAddress.GetAddressBytes().Length];
        for (var bit = 0; bit < network.PrefixLength; bit++) mask[bit / 8] |= (byte)(0x80 >> (bit % 8));
        return mask;
    }
}
