namespace Closemown.Entries;

/// <summary>What a line that leaves things out is filled in with; the pipe and the command line hand one in.</summary>
public sealed class EntryContext
{
    /// <summary>For lines that must be whole: an import.</summary>
    public static EntryContext Whole { get; } = new();

    /// <summary>For lines that a book already holds: whole, and free of every limit of input (length, years, ranges, signs in texts).</summary>
    /// <remarks>What was once taken must be readable for ever: a limit that was drawn later, or was missed once, may not shut a book.</remarks>
    public static EntryContext Stored { get; } = new() { AsksPlausible = false, IsStored = true };

    /// <summary>For lines of a book whose hash was found to fit: as <see cref="Stored"/>, and the line is kept as it stands, not written anew to compare.</summary>
    public static EntryContext Bound { get; } = new() { AsksPlausible = false, IsStored = true, KeepsLine = true };

    /// <summary>Whether the line comes out of a book, where no limit of input holds.</summary>
    public bool IsStored { get; private init; }

    /// <summary>Whether the entry's line is the text that was read.</summary>
    internal bool KeepsLine { get; private init; }

    /// <summary>Whether an implausible value is asked about.</summary>
    public bool AsksPlausible { get; init; } = true;

    /// <summary>Makes an id for a time; null where the line must bring its own.</summary>
    public Func<DateTimeOffset, Guid>? NewId { get; init; }

    /// <summary>The time of a line that names none; null where it must.</summary>
    public Func<DateTimeOffset>? Now { get; init; }

    /// <summary>The clock on the wall, against which the times of entries are held; null where there is none, and nobody is asked about times.</summary>
    public Func<DateTimeOffset>? Clock { get; init; }

    /// <summary>The time of the last entry that was not confirmed to be right; null where there is none.</summary>
    public Func<DateTimeOffset?>? Latest { get; init; }

    /// <summary>The unit of a line that names none; null where it must, because several are in use.</summary>
    public Func<string?>? OnlyUnit { get; init; }

    /// <summary>The area of a line that names none, where the kind needs one.</summary>
    public Func<string?>? OnlyArea { get; init; }
}
