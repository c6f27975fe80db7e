using Closemown.Entries;

namespace Closemown.Book;

/// <summary>What became of an entry handed to a book.</summary>
public enum AppendResult
{
    /// <summary>It is in the book now.</summary>
    Added,

    /// <summary>The very same entry was in the book: nothing to do.</summary>
    AlreadyThere,

    /// <summary>Another entry has this id: refused.</summary>
    Conflict,

    /// <summary>A forecast older than the one the book holds for that day: not kept.</summary>
    Superseded,

    /// <summary>Nothing wrong with it, but it was to enter with all the others or not at all, and one of them conflicts.</summary>
    Withheld,
}

/// <summary>An entry as the book keeps it.</summary>
/// <param name="Seq">Its number by arrival, from 1, without gaps.</param>
/// <param name="Entry">The entry.</param>
/// <param name="Hash">The chain's hash after it, 64 hexadecimal digits.</param>
public readonly record struct StoredEntry(long Seq, Entry Entry, string Hash);

/// <summary>How far a book has come: it differs after every change, whoever made it.</summary>
/// <param name="Entries">The number of the last entry.</param>
/// <param name="Weather">The number of the last weather.</param>
public readonly record struct BookStamp(long Entries, long Weather);

/// <summary>A book: entries by arrival, appended and never changed, bound by a chain of hashes; and weather beside them.</summary>
public interface IEntryStore : IDisposable
{
    /// <summary>The full path of the file, or ":memory:".</summary>
    string Where { get; }

    /// <summary>What is wrong with the book, where <see cref="BookOptions.SoundPart"/> was asked for and only a part of it is given; null where all of it is.</summary>
    BookDamage? Damage { get; }

    /// <summary>How many entries there are, weather not counted.</summary>
    long Count { get; }

    /// <summary>How far the book has come, changes by other programs included.</summary>
    /// <exception cref="BookException">The file is no longer the one that was opened, or cannot be read.</exception>
    BookStamp Stamp { get; }

    /// <summary>Appends one entry; weather goes to its own table, outside the chain.</summary>
    /// <exception cref="BookException">The book is damaged, its file was changed from outside, or it cannot be written: the entry is not in it.</exception>
    AppendResult Append(Entry entry);

    /// <summary>Appends entries in one transaction, in their order.</summary>
    /// <param name="entries">The entries.</param>
    /// <param name="allOrNone">Whether one conflict keeps all of them out.</param>
    /// <returns>What became of each.</returns>
    IReadOnlyList<AppendResult> AppendAll(IReadOnlyList<Entry> entries, bool allOrNone);

    /// <summary>The entries by arrival, up to and including a number; weather is not among them. The chain is checked on the way.</summary>
    /// <exception cref="BookException">The book is damaged.</exception>
    IReadOnlyList<StoredEntry> ReadAll(long upTo = long.MaxValue);

    /// <summary>The entries by arrival after a number: what a reader who knows so many has not seen.</summary>
    IReadOnlyList<StoredEntry> ReadAfter(long seq);

    /// <summary>The entries by arrival after a number, up to and including another.</summary>
    IReadOnlyList<StoredEntry> ReadBetween(long after, long upTo);

    /// <summary>The weather that counts: for each area, day, source and record or forecast the latest that is not voided, by day.</summary>
    IReadOnlyList<Entry> ReadWeather();

    /// <summary>All weather that is kept, by arrival: what an export holds.</summary>
    IReadOnlyList<Entry> ReadWeatherKept();

    /// <summary>The entry or weather of that id, or null.</summary>
    Entry? Find(Guid id);

    /// <summary>The chain's hash after so many entries; <see cref="HashChain.Genesis"/> after none.</summary>
    string HashAt(long seq);
}
