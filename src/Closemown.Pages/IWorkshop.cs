using System.Text.Json.Nodes;

namespace Closemown.Pages;

/// <summary>The book and what is known from it, as pages see it: questions and entries in the shapes of the pipe.</summary>
public interface IWorkshop
{
    /// <summary>Answers a question as <c>closemown pipe</c> does. The answer is the caller's own; asking again before the book changes costs next to nothing.</summary>
    /// <param name="question">An object with <c>ask</c>.</param>
    /// <param name="stop">Ends the wait for others.</param>
    /// <returns>The answer, with <c>ok</c>: false where the question has a fault, which is then under <c>error</c>.</returns>
    Task<JsonObject> Ask(JsonObject question, CancellationToken stop = default);

    /// <summary>Puts entries into the book, in their order, as <c>closemown pipe</c> does: each enters or is refused by itself.</summary>
    /// <param name="entries">Entries; they may leave out <c>v</c>, <c>id</c> and <c>at</c>.</param>
    /// <param name="stop">Ends the wait for others; entries taken until then stay.</param>
    /// <returns>An answer for each, in order.</returns>
    Task<IReadOnlyList<JsonObject>> Append(IReadOnlyList<JsonObject> entries, CancellationToken stop = default);

    /// <summary>Reads entries by arrival.</summary>
    /// <param name="after">The number after which to begin; 0 from the first.</param>
    /// <param name="kind">Only this kind; null for all.</param>
    /// <param name="limit">The most to read, 1 to 1000.</param>
    /// <param name="stop">Ends the wait for others.</param>
    Task<BookSlice> Read(long after, string? kind, int limit, CancellationToken stop = default);

    /// <summary>An entry in the visitor's words; null where the book has none of that id.</summary>
    /// <param name="id">Its id.</param>
    /// <param name="stop">Ends the wait for others.</param>
    Task<EntryTold?> Find(Guid id, CancellationToken stop = default);

    /// <summary>The last entry that stands, by arrival: what "undo" takes out; null in an empty book.</summary>
    /// <param name="unit">Only entries about this unit; null for any.</param>
    /// <param name="stop">Ends the wait for others.</param>
    Task<EntryTold?> Undoable(string? unit = null, CancellationToken stop = default);

    /// <summary>Entries by their time, the newest first, so many a page.</summary>
    /// <param name="sought">Which, and which page.</param>
    /// <param name="stop">Ends the wait for others.</param>
    Task<BookPage> Leaf(BookSought sought, CancellationToken stop = default);

    /// <summary>Reads lines of entries into the book, or with a preview says what would happen and writes nothing. Lines that fail are told; the others enter.</summary>
    /// <param name="lines">JSON Lines.</param>
    /// <param name="preview">Write nothing.</param>
    /// <param name="stop">Ends the wait for others.</param>
    Task<ImportTold> Import(string lines, bool preview, CancellationToken stop = default);

    /// <summary>What every page says first, where it rests on the sound part of a damaged book; null where the book is whole.</summary>
    string? Warning { get; }

    /// <summary>The number of the last entry; weather has none.</summary>
    long Sequence { get; }

    /// <summary>The time a question is asked at now.</summary>
    DateTimeOffset AskedAt { get; }

    /// <summary>The book has changed, here or by another program. Raised from any thread; whoever listens must also stop to.</summary>
    event EventHandler<BookChangedEventArgs>? Changed;
}

/// <summary>Which entry the book ends with now.</summary>
public sealed class BookChangedEventArgs(long sequence) : EventArgs
{
    /// <summary>The number of the last entry.</summary>
    public long Sequence { get; } = sequence;
}

/// <summary>Some entries of the book.</summary>
/// <param name="Entries">Each with its number by arrival, as <c>{"seq":…,"entry":{…},"said":…}</c>, said in the visitor's words.</param>
/// <param name="Next">The number to go on after; null at the end.</param>
/// <param name="Last">The number of the book's last entry.</param>
public sealed record BookSlice(IReadOnlyList<JsonObject> Entries, long? Next, long Last);
