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

    /// <summary>Addresses that are no one's on the internet: RFC 1918, loopback, link-local (RFC 3927), shared (RFC 6598), documentation (RFC 5737); for IPv6 loopback, ULA (RFC 4193), link-local.</summary>
    public static IReadOnlyList<IPNetwork> Networks { get; } =
    [
        IPNetwork.Parse("10.0.0.0/8"), IPNetwork.Parse("172.16.0.0/12"), IPNetwork.Parse("192.168.0.0/16"), IPNetwork.Parse("127.0.0.0/8"),
        IPNetwork.Parse("169.254.0.0/16"), IPNetwork.Parse("100.64.0.0/10"), IPNetwork.Parse("192.0.2.0/24"),
        IPNetwork.Parse("::1/128"), IPNetwork.Parse("fc00::/7"), IPNetwork.Parse("fe80::/10"),
    ];

    /// <summary>The extension that permits these names and the private addresses, and nothing else.</summary>
    public static X509Extension Make(IEnumerable<string> names)
    {
        ArgumentNullException.ThrowIfNull(names);
        var writer = new AsnWriter(AsnEncodingRules.DER);
        using (writer.PushSequence())
        using (writer.PushSequence(Permitted))
        {
            foreach (var name in names)
            {
                using (writer.PushSequence()) writer.WriteCharacterString(UniversalTagNumber.IA5String, name, Dns);
            }
            foreach (var network in Networks)
            {
                using (writer.PushSequence()) writer.WriteOctetString([.. network.BaseAddress.GetAddressBytes(), .. Mask(network)], Ip);
            }
        }
        return new X509Extension(Oid, writer.Encode(), critical: true);
    }

    /// <summary>The names an authority's certificate permits.</summary>
    public static IReadOnlyList<string> NamesOf(X509Certificate2 authority)
    {
        ArgumentNullException.ThrowIfNull(authority);
        if (authority.Extensions.FirstOrDefault(e => e.Oid?.Value == Oid) is not { } extension) return [];
        var names = new List<string>();
        var trees = new AsnReader(extension.RawData, AsnEncodingRules.DER).ReadSequence().ReadSequence(Permitted);
        while (trees.HasData)
        {
            var tree = trees.ReadSequence();
            if (tree.PeekTag().HasSameClassAndValue(Dns)) names.Add(tree.ReadCharacterString(UniversalTagNumber.IA5String, Dns));
        }
        return names;
    }

    /// <summary>Whether a name is one of these, or lies below one.</summary>
    public static bool Permits(IReadOnlyList<string> names, string name) =>
        names.Any(n => name.Equals(n, StringComparison.OrdinalIgnoreCase) || name.EndsWith("." + n, StringComparison.OrdinalIgnoreCase));

    /// <summary>Whether an address lies in one of the networks.</summary>
    public static bool Permits(IPAddress address) => Networks.Any(n => n.Contains(address));

    private static byte[] Mask(IPNetwork network)
    {
        var mask = new byte[network.BaseAddress.GetAddressBytes().Length];
        for (var bit = 0; bit < network.PrefixLength; bit++) mask[bit / 8] |= (byte)(0x80 >> (bit % 8));
        return mask;
    }
}
