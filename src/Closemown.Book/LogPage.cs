using System.Buffers.Binary;

namespace Closemown.Book;

/// <summary>Reads the number of the last entry off a page of a book's database, where the page is a leaf of the table of entries.</summary>
/// <remarks>https://www.sqlite.org/fileformat2.html, sections 1.6 "B-tree Pages" and 2.1 "Record Format".</remarks>
internal static class LogPage
{
    private const byte TableLeaf = 0x0D;

    // As the columns of an entry are kept: its number stands in the key, then texts of 36, any number of and 64 bytes.
    private const ulong InKey = 0, Id = 13 + (2 * 36), Hash = 13 + (2 * 64), LeastText = 13;

    /// <summary>The number of the last entry on a page; 0 where it holds none.</summary>
    /// <param name="page">The page's bytes.</param>
    /// <param name="first">Whether it is the file's first page, which begins with the file's header.</param>
    public static long LastEntry(ReadOnlySpan<byte> page, bool first)
    {
        var head = first ? 100 : 0;
        if (page[head] != TableLeaf) return 0;
        int cells = BinaryPrimitives.ReadUInt16BigEndian(page[(head + 3)..]);
        var pointer = head + 8 + (2 * (cells - 1));
        if (cells == 0 || pointer + 2 > page.Length) return 0;
        int at = BinaryPrimitives.ReadUInt16BigEndian(page[pointer..]);
        if (!Read(page, ref at, out _) || !Read(page, ref at, out var seq) || !Read(page, ref at, out _)) return 0;
        if (!Read(page, ref at, out var key) || !Read(page, ref at, out var id) || !Read(page, ref at, out var json) || !Read(page, ref at, out var hash)) return 0;
        return key == InKey && id == Id && json >= LeastText && json % 2 == 1 && hash == Hash && seq is > 0 and <= long.MaxValue ? (long)seq : 0;
    }

    /// <summary>Reads a number of one to nine bytes, seven bits in each, all eight in the ninth.</summary>
    private static bool Read(ReadOnlySpan<byte> page, ref int at, out ulong value)
    {
        value = 0;
        for (var n = 0; n < 9; n++)
        {
            if (at >= page.Length) return false;
            var next = page[at++];
            if (n == 8)
            {
                value = (value << 8) | next;
                return true;
            }
            value = (value << 7) | (next & 0x7Fu);
            if (next < 0x80) return true;
        }
        return false;
    }
}
