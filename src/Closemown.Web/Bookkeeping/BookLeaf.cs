using System.Text.Json.Nodes;
using Closemown.Advice;
using Closemown.Entries;
using Closemown.Pages;
using Closemown.Quantities;
using Closemown.Typing;

namespace Closemown.Web;

/// <summary>A page of the book: entries by their time, the newest first, in a visitor's words.</summary>
internal static class BookLeaf
{
    private const int Deepest = 20;

    public static BookPage Of(Desk desk, BookSought sought, WritingStyle style)
    {
        var voiders = desk.Arrived.Where(e => e.Voids is not null).ToLookup(e => e.Voids!.Value);
        var standing = desk.Standing.Select(e => e.Id).ToHashSet();
        var byId = desk.Arrived.GroupBy(e => e.Id).ToDictionary(g => g.Key, g => g.First());
        var odd = desk.Units.SelectMany(u => desk.Track(u).Unusual).GroupBy(r => r.Entry.Id).ToDictionary(g => g.Key, g => g.First().Surprise);
        var found = desk.Arrived.Where(e => Sought(e, sought, style)).OrderDescending(EntryOrder.Instance).ToList();
        var page = found.Skip(Math.Max(0, sought.Page - 1) * BookSought.OnPage).Take(BookSought.OnPage).Select(e => Line(e)).ToList();
        return new(page, found.Count, desk.Arrived.Count);

        BookLine Line(Entry e)
        {
            var by = voiders[e.Id].Where(v => Counts(v, voiders, 0)).Order(EntryOrder.Instance).LastOrDefault();
            return new(Told(e, 0), e.Is(VoidEntry.Kind) ? by is null : standing.Contains(e.Id), Place(e)) { TakenOutBy = by?.Id, Corrected = by is not null && !by.Is(VoidEntry.Kind), Voids = e.Voids };
        }

        EntryTold Told(Entry e, int depth) => new(e.Id, e.Kind.Name, JsonNode.Parse(e.Json)!.AsObject(), EntryWords.Short(e, style), EntryWords.When(e.At))
        {
            OddOneIn = odd.TryGetValue(e.Id, out var p) ? Chance.OneIn(p) : null,
            TakesOut = depth < 2 && e.Is(VoidEntry.Kind) && byId.TryGetValue(e.Voids ?? default, out var gone) ? Told(gone, depth + 1) : null,
        };
    }

    private static bool Sought(Entry e, BookSought sought, WritingStyle style) =>
        sought.Id is { } id ? e.Id == id
        : (sought.Kind is null || e.Kind.Name == sought.Kind) && (sought.Place is null || e.Unit == sought.Place || e.Area == sought.Place)
            && (sought.Text is null || Holds(EntryWords.Short(e, style), sought.Text) || Holds(e.Note, sought.Text) || Holds(e.By, sought.Text));

    private static bool Holds(string? text, string sought) => text?.Contains(sought, StringComparison.OrdinalIgnoreCase) == true;

    /// <summary>Whether what takes something out is not itself taken out.</summary>
    private static bool Counts(Entry e, ILookup<Guid, Entry> voiders, int depth) => depth > Deepest || !voiders[e.Id].Any(v => Counts(v, voiders, depth + 1));

    private static string Place(Entry e) => e.Unit is not null && e.Area is not null ? $"{e.Area}, {e.Unit}" : e.Unit ?? e.Area ?? "";
}
