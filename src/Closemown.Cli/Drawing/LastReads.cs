using System.Globalization;
using Closemown.Entries;
using Closemown.Steel;

namespace Closemown.Cli;

/// <summary>What one kind of check last showed.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Name">Its short name.</param>
/// <param name="At">The words at the three stations.</param>
/// <param name="When">The day of the last one, with a word where something was turned since.</param>
internal sealed record LastRead(string Kind, string Name, string?[] At, string When);

/// <summary>The last readings of a unit, by kind, newest first.</summary>
internal static class LastReads
{
    private const int Most = 3;
    private static readonly HashSet<string> Changes = ["clicks", "square-up", "lap", "stone", "grind", "rebuild", "strike", "mow"];

    public static IReadOnlyList<LastRead> Of(string unit, IReadOnlyList<Entry> standing)
    {
        var own = standing.Where(e => e.Unit == unit).ToList();
        var lastChange = own.FindLastIndex(e => Changes.Contains(e.Kind.Name));
        return
        [
            .. own.Select((e, i) => (Entry: e, Index: i)).Where(p => Checks.Words.ContainsKey(p.Entry.Kind.Name))
                .GroupBy(p => p.Entry.Kind.Name).OrderByDescending(g => g.Last().Index).Take(Most)
                .Select(g => new LastRead(g.Key, Name(g.Key), [.. Enumerable.Range(0, Stations.All.Count).Select(s => Last(g.Select(p => p.Entry), s))],
                    g.Last().Entry.At.ToString("d MMM", CultureInfo.InvariantCulture) + (g.Last().Index < lastChange ? ", old" : ""))),
        ];
    }

    /// <summary>A small mark for a word, so that a row can be read at a glance.</summary>
    public static char Mark(string kind, string word) => word switch
    {
        "cuts" or "clean" => '╱',
        "nicks" or "ragged" => '≈',
        "folds" or "uncut" => '∩',
        "tight" or "heavy" => '●',
        "slight" or "light" or "once-a-turn" => '◐',
        "loose" => '○',
        "thin" => '│',
        "wide" => '┃',
        "none" when kind == "torch" => '·',
        "none" => '○',
        _ => '↔',
    };

    /// <summary>What the names of the rows stand for.</summary>
    public static IEnumerable<string> Legend(IEnumerable<LastRead> reads) => reads.Any(r => r.When.EndsWith("old", StringComparison.Ordinal)) ? ["old: read before the last change or mowing"] : [];

    private static string? Last(IEnumerable<Entry> entries, int station) => entries.Reverse().Select(e => e[StationFields.Words[station]] ?? Feeler(e, station)).FirstOrDefault(w => w is not null);

    private static string? Feeler(Entry e, int station) => e[StationFields.Feelers[station]] is { } f ? $"{f.GoUm?.ToString("0", CultureInfo.InvariantCulture) ?? "…"}-{f.NoGoUm?.ToString("0", CultureInfo.InvariantCulture) ?? "…"}" : null;

    private static string Name(string kind) => kind switch { "paper-cut" => "paper", "paper-drag" => "drag", "contact" => "touch", "swath" => "swath", _ => kind };
}
