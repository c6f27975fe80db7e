using System.Security.Cryptography;
using System.Text;

namespace Closemown.Book;

/// <summary>The chain that binds the entries of a book: each hash is SHA-256 over the 32 bytes of the one before and the UTF-8 of the entry's line.</summary>
public static class HashChain
{
    /// <summary>The hash before the first entry: 32 bytes of zero.</summary>
    public static string Genesis { get; } = new('0', 64);

    /// <summary>The hash after one more entry.</summary>
    /// <param name="before">The hash before it, 64 hexadecimal digits.</param>
    /// <param name="json">The entry's canonical line, without line end.</param>
    public static string Next(string before, string json)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(json);
        var bytes = new byte[32 + Encoding.UTF8.GetByteCount(json)];
        Convert.FromHexString(before, bytes.AsSpan(0, 32), out _, out _);
        Encoding.UTF8.GetBytes(json, bytes.AsSpan(32));
        return Convert.ToHexStringLower(SHA256.HashData(bytes));
    }

    /// <summary>The hash of a line that stands alone.</summary>
    internal static string Of(string json) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(json)));
}
