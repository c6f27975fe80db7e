using Closemown.Entries;

namespace Closemown.Cli;

/// <summary>Finds the entry that a person means by its id, or by the start or end of it.</summary>
internal static class EntryPick
{
    public static Entry Find(OpenBook open, string id)
    {
        if (Guid.TryParse(id, out var whole)) return open.Book.Find(whole) ?? throw Missing(id);
        var found = id.Length < 4 ? [] : open.Desk.Arrived.Where(e => e.Id.ToString("D") is var d && (d.StartsWith(id, StringComparison.OrdinalIgnoreCase) || d.EndsWith(id, StringComparison.OrdinalIgnoreCase))).Take(2).ToList();
        return found.Count switch
        {
            1 => found[0],
            0 => throw Missing(id),
            _ => throw CliFault.Refused($"Several entries have ids like {Spelling.Clip(id)}.", "Write more of the id; closemown book list --json shows ids whole."),
        };
    }

    private static CliFault Missing(string id) => CliFault.Refused($"The book has no entry {Spelling.Clip(id)}.", "closemown book list shows the entries and the ends of their ids.");
}
