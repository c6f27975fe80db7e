namespace Closemown.Pages;

/// <summary>A check at three stations: its words, and how it is done.</summary>
/// <param name="Kind">Its kind of entry.</param>
/// <param name="Name">What people call it.</param>
/// <param name="Words">What it may show.</param>
/// <param name="How">How it is done well. Common practice, no source.</param>
public sealed record CheckKind(string Kind, string Name, IReadOnlyList<string> Words, string How)
{
    /// <summary>The checks, the usual one first.</summary>
    public static IReadOnlyList<CheckKind> All { get; } =
    [
        new("paper-cut", "Paper, fed in", ["cuts", "nicks", "folds"], "Feed the end of a dry strip straight in, square to the edge. Turn the reel forward slowly with a stick. Whoever holds the paper turns the reel; both hands out before you touch the phone."),
        new("contact", "Feel backwards", ["none", "light", "heavy", "once-a-turn"], "Turn the reel backwards, slowly, one full turn: is a touch heard or felt, and at which end? Once a turn: one blade touches, the others do not."),
        new("paper-drag", "Paper, pulled", ["tight", "slight", "loose"], "Lay the strip flat between a blade and the edge, and pull."),
        new("torch", "Torch on the edge", ["none", "thin", "wide"], "Reel still, lead off. A bright line along the edge is bluntness."),
        new("swath", "The mown strip", ["clean", "ragged", "uncut"], "Look at the strip from behind: left and right as you walk."),
    ];

    /// <summary>What people call a check of that kind.</summary>
    public static string NameOf(string kind) => (All.FirstOrDefault(c => c.Kind == kind)?.Name ?? kind).ToLowerInvariant();

    /// <summary>The check of that kind; the usual one where there is none.</summary>
    public static CheckKind Of(string? kind) => All.FirstOrDefault(c => c.Kind == kind) ?? All[0];
}
