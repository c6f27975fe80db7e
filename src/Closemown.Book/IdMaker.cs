using System.Security.Cryptography;
using Closemown.Entries;

namespace Closemown.Book;

/// <summary>Makes ids from a time and random bits. Ids of one millisecond ascend in the order they were made; two makers do not meet.</summary>
public sealed class IdMaker
{
    private readonly Lock gate = new();
    private UInt128 bits;                                   // the 74 free bits; starts at random, goes up at random

    public IdMaker()
    {
        Span<byte> random = stackalloc byte[16];
        RandomNumberGenerator.Fill(random);
        bits = BitConverter.ToUInt128(random) >> (128 - 73);        // the top bit stays free for going up
    }

    /// <summary>A new id for that time.</summary>
    public Guid Next(DateTimeOffset at)
    {
        lock (gate)
        {
            bits += (UInt128)RandomNumberGenerator.GetInt32(1, int.MaxValue);
            return EntryIds.Make(at, (int)(bits >> 62), (ulong)(bits & 0x3FFF_FFFF_FFFF_FFFF));
        }
    }
}

/// <summary>Makes ids that a rerun makes again: a time and a running number, so that ids of equal times ascend in the order they were made.</summary>
/// <remarks>For one writer alone, such as a pipe on its own book; two writers on one book must use <see cref="IdMaker"/>.</remarks>
/// <param name="last">The number given out last.</param>
public sealed class SequentialIds(long last = 0)
{
    private const long Most = 1L << 48;

    /// <summary>The number given out last.</summary>
    public long Last { get; private set; } = last;

    /// <summary>Goes on after the running numbers of the ids in a book.</summary>
    public static SequentialIds After(IEntryStore book)
    {
        ArgumentNullException.ThrowIfNull(book);
        var ids = book.ReadAll().Select(s => s.Entry.Id).Concat(book.ReadWeatherKept().Select(e => e.Id));
        return new(ids.Select(NumberOf).DefaultIfEmpty(0).Max());
    }

    /// <summary>A new id for that time.</summary>
    public Guid Next(DateTimeOffset at) => EntryIds.Make(at, 0, (ulong)++Last);

    /// <summary>The running number in an id, 0 where it was made otherwise.</summary>
    private static long NumberOf(Guid id)
    {
        Span<byte> b = stackalloc byte[16];
        id.TryWriteBytes(b, bigEndian: true, out _);
        if ((b[6] & 0xF) != 0 || b[7] != 0) return 0;
        var low = System.Buffers.Binary.BinaryPrimitives.ReadUInt64BigEndian(b[8..]) & 0x3FFF_FFFF_FFFF_FFFF;
        return low < Most ? (long)low : 0;
    }
}
