using System.Buffers.Binary;

namespace Closemown.Entries;

/// <summary>UUIDs of version 7 from a time and 74 bits handed in (RFC 9562, 5.7).</summary>
public static class EntryIds
{
    /// <summary>The id of that time with those bits; ids of one time ascend with <paramref name="high"/>, then <paramref name="low"/>.</summary>
    /// <param name="at">The time; its milliseconds since 1970 must fit 48 bits, earlier times count as 1970.</param>
    /// <param name="high">12 bits.</param>
    /// <param name="low">62 bits.</param>
    public static Guid Make(DateTimeOffset at, int high, ulong low)
    {
        Span<byte> b = stackalloc byte[16];
        var ms = (ulong)Math.Max(0, at.ToUnixTimeMilliseconds());
        BinaryPrimitives.WriteUInt64BigEndian(b, (ms << 16) | 0x7000u | ((uint)high & 0xFFFu));
        BinaryPrimitives.WriteUInt64BigEndian(b[8..], 0x8000_0000_0000_0000UL | (low & 0x3FFF_FFFF_FFFF_FFFFUL));
        return new Guid(b, bigEndian: true);
    }

    /// <summary>Whether the id is a UUID of version 7 and the RFC's variant.</summary>
    public static bool IsVersion7(Guid id) => id.Version == 7 && (id.Variant & 0xC) == 8;
}
