using Closemown.Advice;

namespace Closemown.Bench.Workshop.Strategies;

/// <summary>A strategy with its name in tables and on the command line.</summary>
internal sealed record Contestant(string Name, string Title, Func<CuttingUnit, IStrategy> Make);

/// <summary>All strategies of the workshop.</summary>
internal static class Roster
{
    public const string Strong = "strong";
    public const string StrongOnce = "strong-once";
    public const string Closemown = "closemown";

    public static IReadOnlyList<Contestant> All(AdviceSettings set) =>
    [
        new("nothing", "nothing", _ => new Nothing()),
        new("turn-up", "turn up the end that folds", _ => new TurnUpTheFold()),
        new("lap-click", "lap, then click", _ => new LapThenClick()),
        new("level", "level by drag, lap and click", _ => new LevelByDrag()),
        new(Strong, "strong rule", _ => new StrongRule()),
        new(StrongOnce, "strong rule, feels once", _ => new StrongRule(feels: 1)),
        new(Closemown, "Closemown", u => new Guided(set, u.Make.Own)),
        new("all-knowing", "all-knowing", u => new AllKnowing(u, set)),
    ];

    /// <summary>Those named, in the roster's order; all where none is.</summary>
    public static IReadOnlyList<Contestant> Of(AdviceSettings set, string? names)
    {
        var all = All(set);
        if (names is null) return all;
        var wanted = names.Split(',');
        if (wanted.FirstOrDefault(w => all.All(c => c.Name != w)) is { } unknown)
            throw new ArgumentException($"There is no strategy {unknown}: {string.Join(", ", all.Select(c => c.Name))}.");
        return [.. all.Where(c => wanted.Contains(c.Name))];
    }
}
