namespace Closemown.Pages;

/// <summary>Which entries are sought.</summary>
/// <param name="Kind">Only this kind; null for all.</param>
/// <param name="Place">Only of this unit or area; null for all.</param>
/// <param name="Text">Only where the words, the note or who wrote it hold this; null for all.</param>
/// <param name="Page">Which page, from 1.</param>
public sealed record BookSought(string? Kind, string? Place, string? Text, int Page)
{
    /// <summary>Entries on a page.</summary>
    public const int OnPage = 50;

    /// <summary>Only this entry, whatever else is sought; null for none in particular.</summary>
    public Guid? Id { get; init; }
}

/// <summary>Some entries, the newest first.</summary>
/// <param name="Entries">The entries.</param>
/// <param name="Found">How many are like what is sought, on all pages.</param>
/// <param name="All">How many the book has; weather is not among them.</param>
public sealed record BookPage(IReadOnlyList<BookLine> Entries, int Found, int All);

/// <summary>An entry with what became of it.</summary>
/// <param name="Told">The entry in words.</param>
/// <param name="Stands">Whether it counts.</param>
/// <param name="Place">Its unit or area; empty for none.</param>
public sealed record BookLine(EntryTold Told, bool Stands, string Place)
{
    /// <summary>The entry that took it out or corrected it; null where none did.</summary>
    public Guid? TakenOutBy { get; init; }

    /// <summary>Whether what took it out is a correction.</summary>
    public bool Corrected { get; init; }

    /// <summary>The entry that it corrects or takes out; null for none.</summary>
    public Guid? Voids { get; init; }
}

/// <summary>What an import did, or would do.</summary>
/// <param name="Preview">Nothing was written.</param>
/// <param name="Lines">Lines that are not blank.</param>
/// <param name="Added">New in the book.</param>
/// <param name="AlreadyThere">In the book already.</param>
/// <param name="Superseded">Forecasts older than what the book holds.</param>
/// <param name="Bad">Lines not taken.</param>
/// <param name="Faults">What is wrong with them; the first hundred.</param>
public sealed record ImportTold(bool Preview, long Lines, long Added, long AlreadyThere, long Superseded, long Bad, IReadOnlyList<LineTold> Faults);

/// <summary>What is wrong with a line.</summary>
/// <param name="Line">Its number, from 1.</param>
/// <param name="Message">What is wrong.</param>
/// <param name="Remedy">What to do.</param>
public sealed record LineTold(long Line, string Message, string Remedy);
