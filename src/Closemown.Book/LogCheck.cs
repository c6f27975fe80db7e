using System.Buffers.Binary;

namespace Closemown.Book;

/// <summary>Finds damage in the write-ahead log that SQLite itself passes over in silence.</summary>
/// <remarks>
/// SQLite takes the first frame whose checksum does not fit for the end of the log, as it cannot tell damage from a write that was cut off.
/// But each commit is flushed before it is acknowledged, so what a crash cuts off is one transaction at most: where whole frames of a
/// further commit follow the bad one, something acknowledged has been lost. The layout is in https://www.sqlite.org/fileformat2.html,
/// section 4, "The Write-Ahead Log".
/// </remarks>
internal static class LogCheck
{
    private const int HeaderSize = 32;
    private const int FrameHeader = 24;

    /// <summary>How many commits, at the least, lie behind damage in a book's log; 0 where there is no log, or nothing wrong with it.</summary>
    public static long Lost(string book)
    {
        Span<byte> header = stackalloc byte[HeaderSize], again = stackalloc byte[HeaderSize];
        // Another program may start the log over meanwhile; it then writes another header first.
        for (var attempt = 0; attempt < 5; attempt++)
        {
            try
            {
                using var file = new FileStream(book + "-wal", FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, 1 << 16);
                if (file.ReadAtLeast(header, HeaderSize, throwOnEndOfStream: false) < HeaderSize) return 0;
                var lost = Frames(file, header);
                if (lost == 0) return 0;
                file.Position = 0;
                if (file.ReadAtLeast(again, HeaderSize, throwOnEndOfStream: false) == HeaderSize && header.SequenceEqual(again)) return lost;
            }
            catch (FileNotFoundException)
            {
                return 0;
            }
            catch (DirectoryNotFoundException)
            {
                return 0;
            }
        }
        return 0;
    }

    /// <summary>The number of the last entry on any page in a book's log, up to its last whole commit; 0 where it holds none, null where there is no log, or no commit in it.</summary>
    public static long? LastEntry(string book)
    {
        try
        {
            using var file = new FileStream(book + "-wal", FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, 1 << 16);
            var header = new byte[HeaderSize];
            if (file.ReadAtLeast(header, HeaderSize, throwOnEndOfStream: false) < HeaderSize) return null;
            if (!Header(header, out var bigEndian, out var pageSize)) return null;
            var frame = new byte[FrameHeader + (int)pageSize];
            var before = Sum.At(header.AsSpan(24));
            var (last, pending) = (default(long?), 0L);
            while (file.ReadAtLeast(frame, frame.Length, throwOnEndOfStream: false) == frame.Length && Fits(frame, header.AsSpan(16, 8), before, bigEndian))
            {
                before = Sum.At(frame.AsSpan(16));
                pending = Math.Max(pending, LogPage.LastEntry(frame.AsSpan(FrameHeader), BinaryPrimitives.ReadUInt32BigEndian(frame) == 1));
                if (BinaryPrimitives.ReadUInt32BigEndian(frame.AsSpan(4)) != 0) last = pending;
            }
            return last;
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return null;
        }
    }

    private static bool Header(ReadOnlySpan<byte> header, out bool bigEndian, out uint pageSize)
    {
        var magic = BinaryPrimitives.ReadUInt32BigEndian(header);
        bigEndian = (magic & 1) == 1;
        pageSize = BinaryPrimitives.ReadUInt32BigEndian(header[8..]);
        return (magic & ~1u) == 0x377F0682 && IsPageSize(pageSize) && Sum.Over(header[..24], default, bigEndian) == Sum.At(header[24..]);
    }

    private static bool Fits(ReadOnlySpan<byte> frame, ReadOnlySpan<byte> salts, Sum before, bool bigEndian) =>
        frame[8..16].SequenceEqual(salts)
            && Sum.Over(frame[FrameHeader..], Sum.Over(frame[..8], before, bigEndian), bigEndian) == Sum.At(frame[16..]);

    private static long Frames(FileStream file, ReadOnlySpan<byte> header)
    {
        var stored = Sum.At(header[24..]);
        var goodHeader = Header(header, out var bigEndian, out var pageSize);
        if (!goodHeader)
        {
            bigEndian = false;                              // as SQLite writes it on all machines that .NET runs on
            pageSize = 4096;                                // as a book has it
        }
        var frame = new byte[FrameHeader + (int)pageSize];
        var (before, salts) = (stored, header[16..24].ToArray());
        var (broken, badCommits, commits, first) = (!goodHeader, 0, 0L, true);
        while (file.ReadAtLeast(frame, frame.Length, throwOnEndOfStream: false) == frame.Length)
        {
            if (first && !goodHeader) salts = frame[8..16];
            first = false;
            var sum = Sum.At(frame.AsSpan(16));
            var fits = Fits(frame, salts, before, bigEndian);
            var commit = BinaryPrimitives.ReadUInt32BigEndian(frame.AsSpan(4)) != 0;
            if (!broken && !fits) (broken, badCommits) = (true, commit ? 1 : 0);
            else if (broken && fits && commit) commits++;
            before = sum;
        }
        // One commit in all may be a write that was cut off; behind a bad header, which was flushed before any frame, none may be.
        return commits == 0 ? 0 : goodHeader ? commits + badCommits - 1 : commits;
    }

    private static bool IsPageSize(uint size) => size is >= 512 and <= 65536 && (size & (size - 1)) == 0;

    /// <summary>The checksum of the log: two running sums over pairs of words.</summary>
    private readonly record struct Sum(uint A, uint B)
    {
        public static Sum At(ReadOnlySpan<byte> stored) => new(BinaryPrimitives.ReadUInt32BigEndian(stored), BinaryPrimitives.ReadUInt32BigEndian(stored[4..]));

        public static Sum Over(ReadOnlySpan<byte> bytes, Sum from, bool bigEndian)
        {
            var (a, b) = (from.A, from.B);
            unchecked
            {
                for (var i = 0; i + 8 <= bytes.Length; i += 8)
                {
                    a += Word(bytes[i..], bigEndian) + b;
                    b += Word(bytes[(i + 4)..], bigEndian) + a;
                }
            }
            return new(a, b);
        }

        private static uint Word(ReadOnlySpan<byte> at, bool bigEndian) => bigEndian ? BinaryPrimitives.ReadUInt32BigEndian(at) : BinaryPrimitives.ReadUInt32LittleEndian(at);
    }
}
