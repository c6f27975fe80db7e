using Closemown.Advice;
using Closemown.Entries;

namespace Closemown.Bench;

/// <summary>The invented season of the demo, as a desk.</summary>
internal static class DemoBook
{
    public static IReadOnlyList<Entry> Entries { get; } =
        [.. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "demo", "ferncombe.jsonl")).Select(line =>
        {
            var faults = EntryReader.Read(line, EntryContext.Whole, out var entry);
            return entry ?? throw new InvalidOperationException(faults[0].ToString());
        })];

    public static Desk Desk()
    {
        var desk = new Desk();
        foreach (var e in Entries) desk.Add(e, "bench");
        return desk;
    }

    public static string Unit => Entries.First(e => e.Unit is not null).Unit!;
}
