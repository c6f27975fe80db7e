using System.Buffers;
using System.Security.Cryptography;
using System.Text;

namespace Closemown.Book;

/// <summary>Goes along the chain and looks whether each link fits: the same hashes as <see cref="HashChain"/>, without making a text of each.</summary>
internal sealed class ChainWalk
{
    private const int Hash = 32;
    private readonly ArrayBufferWriter<byte> link = new(1024);
    private readonly byte[] before = new byte[Hash];

    /// <summary>Begins after an entry whose hash is known.</summary>
    /// <param name="hash">64 hexadecimal digits.</param>
    /// <returns>Whether it is a hash.</returns>
    public bool Begin(string hash) => hash.Length == 2 * Hash && Convert.FromHexString(hash, before, out _, out _) == OperationStatus.Done;

    /// <summary>Whether an entry's stored hash is the one that follows; goes on after it where it is.</summary>
    public bool Takes(string json, string hash) => Takes(Encoding.UTF8.GetBytes(json), hash);

    /// <summary>The same, of a line's UTF-8.</summary>
    public bool Takes(ReadOnlySpan<byte> json, string hash)
    {
        link.ResetWrittenCount();
        link.Write(before);
        link.Write(json);
        Span<byte> next = stackalloc byte[Hash];
        SHA256.HashData(link.WrittenSpan, next);
        Span<char> written = stackalloc char[2 * Hash];
        Convert.TryToHexStringLower(next, written, out _);
        if (!hash.AsSpan().SequenceEqual(written)) return false;
        next.CopyTo(before);
        return true;
    }
}
