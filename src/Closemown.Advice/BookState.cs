using System.Buffers.Binary;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Closemown.Entries;

namespace Closemown.Advice;

/// <summary>A book's state as the set of its entries, whatever order they arrived in.</summary>
/// <param name="Count">How many there are.</param>
/// <param name="Sum">The sum of their marks; it does not tell their order.</param>
public readonly record struct BookState(int Count, ulong Sum)
{
    private const int Digits = 12, DropBits = 64 - (4 * Digits);

    /// <summary>The sum as an id writes it: the first twelve hexadecimal digits.</summary>
    public string Name => Shortened(Sum).ToString("x12", CultureInfo.InvariantCulture);

    /// <summary>An entry's mark: the first 64 bits of SHA-256 over its canonical form in UTF-8.</summary>
    public static ulong MarkOf(Entry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return BinaryPrimitives.ReadUInt64BigEndian(SHA256.HashData(Encoding.UTF8.GetBytes(entry.Json)));
    }

    /// <summary>Sums run over: only that the same entries give the same sum matters.</summary>
    internal static ulong Plus(ulong sum, ulong mark) => unchecked(sum + mark);

    internal static ulong Less(ulong sum, ulong mark) => unchecked(sum - mark);

    /// <summary>The part of a sum that an id can tell.</summary>
    internal static ulong Shortened(ulong sum) => sum >> DropBits;

    /// <summary>Whether a text is a sum as ids write it, and not the start of a chain's hash, as older ids have it.</summary>
    internal static bool TryRead(string text, out ulong shortened)
    {
        shortened = 0;
        return text.Length == Digits && ulong.TryParse(text, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out shortened);
    }
}
