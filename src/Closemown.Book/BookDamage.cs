namespace Closemown.Book;

/// <summary>From where on a book cannot be trusted.</summary>
/// <param name="FromEntry">The number of the first entry that cannot, from 1: all before it are what was written. Null where only weather is damaged.</param>
/// <param name="Weather">How many rows of weather are left out, as they are not what was written.</param>
/// <param name="Message">What is wrong.</param>
/// <param name="Remedy">What to do.</param>
public sealed record BookDamage(long? FromEntry, long Weather, string Message, string Remedy)
{
    /// <summary>One sentence to stand before every answer that comes from the sound part only.</summary>
    public string Warning => FromEntry switch
    {
        1 => $"The book is damaged from its first entry on: this is the answer of an empty book. {Message}",
        { } from => $"The book is damaged: this rests on entries 1 to {from - 1} only. {Message}",
        null => $"The weather in the book is damaged: this rests on what is left of it. {Message}",
    };

    internal const string GoBack =
        "Keep this file as it is and go back to the latest backup: closemown book restore BACKUP --merge also brings in what can still be read here.";

    internal const string Meanwhile = " Until then --sound-part answers from what is sound.";

    /// <summary>An entry that is not what was written.</summary>
    internal static BookDamage Chain(long entry) =>
        new(entry, 0, $"The chain is broken at entry {entry}: it, or the one before it, is not what was written.", GoBack);

    /// <summary>Entries that the book once held and that cannot be reached any more.</summary>
    internal static BookDamage Missing(long entry, long ids, long rows) =>
        new(entry, 0, $"The book knows the ids of {ids} entries, and {rows} can be reached.", GoBack);

    internal static BookDamage Unreadable(long entry, Exception e) =>
        new(entry, 0, e is BookException ? e.Message : $"Entry {entry} cannot be read ({e.Message.TrimEnd('.')}).", GoBack);

    internal static BookDamage OfWeather(long rows, string what) => new(null, rows, $"{what}.", GoBack);

    /// <summary>Where an answer from the sound part was not asked for.</summary>
    internal BookException ToException() => new(BookTrouble.Damaged, $"The book is damaged. {Message}", Remedy + Meanwhile);

    /// <summary>Where something was to be entered.</summary>
    internal BookException TakesNone() => new(BookTrouble.Damaged, $"The book is damaged, and takes no entry. {Message}", Remedy);
}
