using System.Text;
using Closemown.Book;
using Closemown.Entries;

namespace Closemown.Fuzzing;

/// <summary>One line read as an entry: as people write it, whole, and as it is stored.</summary>
internal sealed class EntryTarget() : FuzzTarget("entry")
{
    private static readonly DateTimeOffset Now = new(2026, 5, 1, 8, 0, 0, TimeSpan.Zero);

    public override IReadOnlyList<byte[]> Seeds { get; } = Bytes(GoodLines.Entries.Concat(GoodLines.Whole));

    public override int Longest => EntryReader.MaxLineLength + 2000;

    public override int Weight => 2;

    public override void Run(byte[] input)
    {
        var line = Encoding.UTF8.GetString(input);
        var filled = Read(line, new EntryContext { NewId = new SequentialIds().Next, Now = () => Now, OnlyUnit = () => "mower", OnlyArea = () => "turf" });
        var whole = Read(line, EntryContext.Whole);
        var stored = Read(line, EntryContext.Stored);
        // What may be left out, and what is asked about, changes whether a line is taken, never what it says.
        Laws.Must(whole is null || whole.Json == filled?.Json, "a whole line needs nothing filled in", line);
        Laws.Must(whole is null || (stored is not null && stored.Id == whole.Id), "what is taken whole is taken when stored", line);
    }

    private static Entry? Read(string line, EntryContext context)
    {
        Laws.Faults(EntryReader.Read(line, context, out var entry), entry);
        if (entry is not null) Laws.ReadBack(entry);
        return entry;
    }
}
