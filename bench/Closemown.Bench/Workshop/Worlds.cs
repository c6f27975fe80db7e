namespace Closemown.Bench.Workshop;

/// <summary>The worlds that what is said is tried in: the workshop's own, and two that are not as believed.</summary>
internal static class Worlds
{
    public const string Own = "own";
    public const string OtherWear = "other-wear";
    public const string PoorFingers = "poor-fingers";

    public static IReadOnlyList<(string Name, string Title)> All { get; } =
        [(Own, "own world"), (OtherWear, "another law of wear and dulling"), (PoorFingers, "fingers twice as bad")];

    /// <summary>The circumstances in the world of that name.</summary>
    public static Circumstances In(string world, Circumstances c) => world switch
    {
        Own => c,
        OtherWear => c with { OtherWear = true },
        PoorFingers => c with { Fingers = 2 * c.Fingers },
        _ => throw new ArgumentException($"There is no world {world}: {string.Join(", ", All.Select(w => w.Name))}."),
    };
}
