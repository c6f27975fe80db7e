using Closemown.Entries;

namespace Closemown.Typing;

/// <summary>The kind that is meant by what people say: its own name, "mowed" for mow, "topdress" for work topdress.</summary>
public static class KindNames
{
    private static readonly (string Kind, string[] Said)[] Other =
    [
        ("mow", ["mown", "mowed", "mowing"]),
        ("canopy", ["sward", "grass-height", "sward-height"]),
        ("look", ["looks", "looked"]),
        ("clippings", ["clipping", "box", "boxes"]),
        ("water", ["watered", "watering", "irrigate", "irrigated", "irrigation"]),
        ("feed", ["fed", "feeding", "fertilise", "fertilize", "fertilised", "fertilized", "fertiliser", "fertilizer"]),
        ("treat", ["treated", "treatment", "spray", "sprayed"]),
        ("soil-test", ["soil", "soiltest"]),
        ("pace", ["speed", "green-speed"]),
        ("wish", ["want", "wanted", "target"]),
        ("lap", ["backlap", "back-lap", "lapped"]),
        ("strike", ["hit", "struck"]),
        ("screw", ["screws"]),
        ("clicks", ["click"]),
        ("locked", ["lock", "tightened"]),
        ("grind", ["regrind", "ground", "spin-grind"]),
    ];

    /// <summary>The kind, and what the word says of its fields; null where no kind is meant.</summary>
    public static (KindSpec Kind, IReadOnlyList<string> Words)? Find(string said)
    {
        if (Kinds.Find(said) is { } exact) return (exact, []);
        var word = said.ToLowerInvariant();
        if (Kinds.Find(word) is { } kind) return (kind, []);
        if (Array.Find(Other, o => o.Said.Contains(word)).Kind is { } other) return (Kinds.Get(other), []);
        if (word is "rain") return (WeatherEntry.Kind, ["rain"]);
        return Sayings.Work(word) is { } work ? (WorkEntry.Kind, [work]) : null;
    }

    /// <summary>What to say of a word that names no kind.</summary>
    public static TypedFault None(string said)
    {
        if (said.ToLowerInvariant() is "away" or "holiday" or "holidays" or "free" or "absent" or "weekdays" or "days")
            return new TypedFault($"There is no kind \"{Spelling.Clip(said)}\".", "The days on which you can mow are part of the wish: closemown add wish 5mm tue fri. Plans leave the other days free.");
        if (said.ToLowerInvariant() is "match" or "fixture" or "fixtures")
            return new TypedFault($"There is no kind \"{Spelling.Clip(said)}\".", "Matches are part of the wish: closemown add wish match 2026-05-09.");
        if (Kinds.Reserved.Contains(said)) return new TypedFault($"The kind \"{said}\" is kept for later.", "Put it into the note of another entry for now: --note \"…\".");
        var near = Spelling.Nearest(said, Kinds.All.Select(k => k.Name));
        return new TypedFault($"There is no kind \"{Spelling.Clip(said)}\".", near is not null ? $"Did you mean \"{near}\"?" : $"Kinds are {string.Join(", ", Kinds.All.Where(k => k.Name != "void").Select(k => k.Name))}.");
    }
}
