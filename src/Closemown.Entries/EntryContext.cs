namespace Closemown.Entries;

/// <summary>What a line that leaves things out is filled in with; the pipe and the command line hand one in.</summary>
public sealed class EntryContext
{
    /// <summary>For lines that must be whole: an import.</summary>
    public static EntryContext Whole { get; } = new();

    /// <summary>For lines that a book already holds: whole, and not asked about again where a range of plausible values has since changed.</summary>
    public static EntryContext Stored { get; } = new() { AsksPlausible = false };

    /// <summary>Whether an implausible value is asked about.</summary>
    public bool AsksPlausible { get; init; } = true;

    /// <summary>Makes an id for a time; null where the line must bring its own.</summary>
    public Func<DateTimeOffset, Guid>? NewId { get; init; }

    /// <summary>The time of a line that names none; null where it must.</summary>
    public Func<DateTimeOffset>? Now { get; init; }

    /// <summary>The unit of a line that names none; null where it must, because several are in use.</summary>
    public Func<string?>? OnlyUnit { get; init; }

    /// <summary>The area of a line that names none, where the kind needs one.</summary>
    public Func<string?>? OnlyArea { get; init; }
}
