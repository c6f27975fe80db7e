namespace Closemown.Browser.Tests;

/// <summary>A page that every check is made on.</summary>
/// <param name="Path">Its address on the server, from the root.</param>
/// <param name="Name">Its name in the names of files: small letters and hyphens.</param>
/// <param name="Heading">The text of its one h1.</param>
/// <param name="Texts">What must be read on it over the demo's book, with and without script.</param>
/// <param name="TargetHighPx">The least height of what is pressed, CSS px: 44 (WCAG 2.2, success criterion 2.5.5), 76 at the bench with gloves on.</param>
public sealed record SitePage(string Path, string Name, string Heading, IReadOnlyList<string> Texts, double TargetHighPx = 44);

/// <summary>All pages, in the order of the navigation. A page added here is opened by every check, and measured by first-view.</summary>
public static class SitePages
{
    public static IReadOnlyList<SitePage> All { get; } =
    [
        new("/", "today", "Today", ["Do now", "Then", "Unusual"]),
        new("/look", "look", "Words and units on this device", ["Gaps in", "thou", "Keep it so"]),
        new("/enter", "write", "Write down", ["paper-cut"]),
        new("/enter?kind=mow", "write-mow", "Write down: mow", ["Write it down"]),
        new("/steel", "steel", "Steel", ["as walked behind", "Write it down", "The next step", "What this unit has taught"]),
        new("/height", "height", "Height", ["From behind", "What to set", "Set it, step by step", "What would teach most"]),
        new("/turf", "turf", "Turf", ["It stands at", "Stress", "Water and feed", "the label and local law decide"]),
        new("/plan", "plan", "Plan", ["Before each mowing", "The days", "The wish", "The mowings"]),
        new("/book", "book", "Book", ["the newest first", "Older", "To take away"]),
        new("/book/import", "book-import", "Bring entries in", ["one entry a line"]),
        new("/score", "score", "Said and came true", ["Said with about 90 in 100", "Heights read on the bench"]),
        new("/card", "card", "Card for whoever stands in", ["Mow on", "Stop, do not mow on"]),
        new("/card?fill=1", "card-filled", "Type the card in", ["Line 1"]),
        new("/new?what=unit", "new-unit", "Your mower", ["Four questions"]),
        new("/new?what=area", "new-area", "A green or a lawn", ["Four questions"]),
        new("/bench", "bench", "At the bench", ["Before hands go near", "Where I stand", "Begin"], 76),
        new("/bench?unit=ten-blade&begun=1", "bench-step", "At the bench", ["feel at both ends", "Write it down", "Not done"], 76),
        new("/bench?unit=ten-blade&begun=1&aim=4&area=green", "bench-height", "At the bench", ["Done as said", "Done otherwise", "Not done"], 76),
        new("/after", "after", "After mowing", ["clean", "ragged", "uncut", "The mowing itself"], 76),
    ];

    /// <summary>The page of this name.</summary>
    /// <exception cref="ArgumentException">There is none.</exception>
    public static SitePage Named(string name) => All.FirstOrDefault(p => p.Name == name) ?? throw new ArgumentException($"There is no page named {name}.", nameof(name));
}
