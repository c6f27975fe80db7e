namespace Closemown.Entries;

/// <summary>The order of entries: by time, then by id, whatever order they arrived in.</summary>
public sealed class EntryOrder : IComparer<Entry>
{
    public static EntryOrder Instance { get; } = new();

    public int Compare(Entry? x, Entry? y)
    {
        ArgumentNullException.ThrowIfNull(x);
        ArgumentNullException.ThrowIfNull(y);
        var byTime = x.At.UtcTicks.CompareTo(y.At.UtcTicks);
        return byTime != 0 ? byTime : CompareIds(x.Id, y.Id);
    }

    /// <summary>Ids compare as their text does, so that every device and database agrees.</summary>
    public static int CompareIds(Guid x, Guid y)
    {
        Span<byte> a = stackalloc byte[16], b = stackalloc byte[16];
        x.TryWriteBytes(a, bigEndian: true, out _);
        y.TryWriteBytes(b, bigEndian: true, out _);
        return a.SequenceCompareTo(b);
    }
}
