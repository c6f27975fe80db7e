using Closemown.Entries;

namespace Closemown.Book;

/// <summary>How lines are imported.</summary>
public sealed record ImportOptions
{
    /// <summary>Write nothing, and say what would happen.</summary>
    public bool Preview { get; init; }

    /// <summary>One bad line keeps all of them out. All entries are then held in memory until the last line is read.</summary>
    public bool AllOrNone { get; init; }

    /// <summary>The longest line taken, in characters.</summary>
    public int MaxLineLength { get; init; } = EntryReader.MaxLineLength;

    /// <summary>How many faults are kept to be shown; all are counted.</summary>
    public int MaxFaultsKept { get; init; } = 100;
}

/// <summary>What is wrong with a line.</summary>
/// <param name="Line">Its number, from 1; blank lines count.</param>
/// <param name="Fault">What is wrong and what to do.</param>
public sealed record LineFault(long Line, EntryFault Fault)
{
    public override string ToString() => $"line {Line}: {Fault}";
}

/// <summary>What an import did, or with a preview would do. Every line is counted once: blank, bad, or as one of the results.</summary>
public sealed record ImportReport
{
    public bool Preview { get; init; }

    public long Lines { get; init; }

    public long Blank { get; init; }

    /// <summary>New in the book.</summary>
    public long Added { get; init; }

    /// <summary>In the book already.</summary>
    public long AlreadyThere { get; init; }

    /// <summary>Forecasts older than what the book holds.</summary>
    public long Superseded { get; init; }

    /// <summary>Good, but kept out because another line is bad and all or none were to enter.</summary>
    public long Withheld { get; init; }

    /// <summary>Lines that were not taken, conflicts among them.</summary>
    public long Bad { get; init; }

    /// <summary>All faults; a bad line has one or more.</summary>
    public long FaultCount { get; init; }

    /// <summary>The first faults, by line.</summary>
    public IReadOnlyList<LineFault> Faults { get; init; } = [];

    public bool Ok => Bad == 0;
}

/// <summary>Reads JSON Lines into a book. Importing twice is importing once: known entries are left as they are.</summary>
public static class Importer
{
    /// <summary>Imports UTF-8, with or without byte order mark.</summary>
    public static ImportReport Read(Stream stream, IEntryStore store, ImportOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(store);
        options ??= new();
        return new ImportRun(new ByteLines(stream, options.MaxLineLength), store, options).Go();
    }

    /// <summary>Imports text.</summary>
    public static ImportReport Read(TextReader reader, IEntryStore store, ImportOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(reader);
        ArgumentNullException.ThrowIfNull(store);
        options ??= new();
        return new ImportRun(new TextLines(reader, options.MaxLineLength), store, options).Go();
    }
}

/// <summary>One import under way.</summary>
internal sealed class ImportRun(LineSource lines, IEntryStore store, ImportOptions options)
{
    private const int Batch = 500;

    private readonly List<(long Line, Entry Entry)> waiting = [];
    private readonly List<LineFault> faults = [];
    private readonly BookSketch sketch = new(store);
    private long lineCount, blank, bad, faultCount, withheld;
    private long added, alreadyThere, superseded;

    public ImportReport Go()
    {
        while (lines.Next(out var line, out var fault))
        {
            lineCount++;
            if (fault is not null) Refuse(lineCount, [fault]);
            else if (string.IsNullOrWhiteSpace(line)) blank++;
            else if (EntryReader.Read(line, EntryContext.Whole, out var entry) is { Count: > 0 } found) Refuse(lineCount, found);
            else Take(entry!);
        }
        Hand();
        return new()
        {
            Preview = options.Preview,
            Lines = lineCount,
            Blank = blank,
            Added = added,
            AlreadyThere = alreadyThere,
            Superseded = superseded,
            Withheld = withheld,
            Bad = bad,
            FaultCount = faultCount,
            Faults = [.. faults.OrderBy(f => f.Line)],
        };
    }

    private void Take(Entry entry)
    {
        waiting.Add((lineCount, entry));
        if (waiting.Count >= Batch && !options.AllOrNone) Hand();
    }

    private void Refuse(long line, IReadOnlyList<EntryFault> found)
    {
        bad++;
        faultCount += found.Count;
        foreach (var f in found.Take(Math.Max(0, options.MaxFaultsKept - faults.Count))) faults.Add(new(line, f));
    }

    /// <summary>Hands the waiting entries to the book, or to the sketch of it.</summary>
    private void Hand()
    {
        if (waiting.Count == 0) return;
        var dry = options.Preview || (options.AllOrNone && bad > 0);
        IReadOnlyList<AppendResult> results = dry
            ? [.. waiting.Select(w => sketch.Append(w.Entry))]
            : store.AppendAll([.. waiting.Select(w => w.Entry)], options.AllOrNone);
        if (options.AllOrNone && (bad > 0 || results.Contains(AppendResult.Conflict))) results = Arrivals.Withhold(results);
        for (var i = 0; i < results.Count; i++) Record(waiting[i].Line, waiting[i].Entry, results[i]);
        waiting.Clear();
    }

    private void Record(long line, Entry entry, AppendResult result)
    {
        switch (result)
        {
            case AppendResult.Added:
                added++;
                break;
            case AppendResult.AlreadyThere:
                alreadyThere++;
                break;
            case AppendResult.Superseded:
                superseded++;
                break;
            case AppendResult.Withheld:
                withheld++;
                break;
            default:
                Refuse(line, [Conflicts.Of(entry)]);
                break;
        }
    }
}

/// <summary>The fault of an entry whose id another one has.</summary>
public static class Conflicts
{
    public static EntryFault Of(Entry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return new(FaultCodes.Conflict, "id", $"Another entry has the id {entry.Id:D}.",
            "An entry is never changed: give this one a new id, and to replace the other add \"voids\" with the other's id.");
    }
}
