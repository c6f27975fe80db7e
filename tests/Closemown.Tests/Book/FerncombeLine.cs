using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace Closemown.Tests.Book;

/// <summary>One generated line of the demo: an id from what it says, so that the same seed makes the same file.</summary>
internal static class FerncombeLine
{
    public static string Of(DateTimeOffset at, string said)
    {
        Span<byte> id = stackalloc byte[16];
        SHA256.HashData(Encoding.UTF8.GetBytes(said)).AsSpan(0, 16).CopyTo(id);
        for (var i = 0; i < 6; i++) id[i] = (byte)((at.ToUnixTimeMilliseconds() >> (40 - (8 * i))) & 0xFF);
        id[6] = (byte)((id[6] & 0x0F) | 0x70);
        id[8] = (byte)((id[8] & 0x3F) | 0x80);
        return $"{{\"v\":1,\"id\":\"{new Guid(id, bigEndian: true):D}\",\"at\":\"{at:yyyy-MM-ddTHH:mm:sszzz}\",{said}}}";
    }

    public static string N(double x) => Math.Round(x, 1).ToString(CultureInfo.InvariantCulture);
}
