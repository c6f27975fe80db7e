using System.Text.Json.Nodes;
using Closemown.Advice;
using Closemown.Book;
using Closemown.Entries;
using Closemown.Pages;
using Closemown.Quantities;
using Closemown.Typing;

namespace Closemown.Web;

/// <summary>What an entry of the book says, in a visitor's words.</summary>
internal static class EntryTelling
{
    /// <summary>The entry of an id; null where there is none.</summary>
    public static EntryTold? Of(Desk desk, IEntryStore book, Guid id, WritingStyle style) =>
        book.Find(id) is { } entry ? Told(desk, book, entry, style, 0) : null;

    /// <summary>With what it takes out; of what took something out in turn, that too.</summary>
    private static EntryTold Told(Desk desk, IEntryStore book, Entry entry, WritingStyle style, int depth) =>
        new(entry.Id, entry.Kind.Name, JsonNode.Parse(entry.Json)!.AsObject(), Said(entry, style), EntryWords.When(entry.At))
        {
            OddOneIn = Odd(desk, entry) is { } p ? Chance.OneIn(p) : null,
            TakesOut = depth < 2 && entry.Is(VoidEntry.Kind) && entry.Voids is { } target && book.Find(target) is { } gone ? Told(desk, book, gone, style, depth + 1) : null,
        };

    /// <summary>The words of an entry as the book gives it.</summary>
    public static string Said(JsonObject entry, WritingStyle style) =>
        EntryReader.Read(entry.ToJsonString(), EntryContext.Stored, out var read) is { Count: 0 } ? Said(read!, style) : (string?)entry["kind"] ?? "";

    private static string Said(Entry entry, WritingStyle style) => EntryWords.Short(entry, style);

    /// <summary>The last entry by arrival that stands; null where there is none.</summary>
    /// <param name="desk">The entries.</param>
    /// <param name="unit">Only entries about this unit; null for any.</param>
    public static Entry? Last(Desk desk, string? unit)
    {
        var standing = desk.Standing.Select(e => e.Id).ToHashSet();
        return desk.Arrived.LastOrDefault(e => standing.Contains(e.Id) && (unit is null || e.Unit == unit));
    }

    /// <summary>How odd a reading was, where it does not fit its unit's own pattern.</summary>
    private static double? Odd(Desk desk, Entry entry) =>
        entry.Unit is { } unit && desk.Units.Contains(unit) && desk.Track(unit).Memory.Unusual is { } odd && odd.Entry.Id == entry.Id ? odd.Surprise : null;
}
