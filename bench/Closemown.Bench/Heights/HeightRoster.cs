using System.Globalization;
using Closemown.Bench.Heights.Strategies;

namespace Closemown.Bench.Heights;

/// <summary>A strategy with its name in tables and on the command line.</summary>
internal sealed record HeightContestant(string Name, string Title, Func<BenchUnit, IHeightStrategy> Make);

/// <summary>All strategies of setting the height.</summary>
internal static class HeightRoster
{
    public const string Alternating = "alternating";

    /// <param name="probabilities">How sure Closemown is asked to be: it runs once for each.</param>
    public static IReadOnlyList<HeightContestant> All(double[] probabilities) =>
    [
        new("one-side", "one side first", _ => new OneSideFirst()),
        new(Alternating, "alternating", _ => new Alternating(fromBelow: false)),
        new("from-below", "alternating, from below", _ => new Alternating(fromBelow: true)),
        .. probabilities.Select(p => new HeightContestant("closemown", string.Create(CultureInfo.InvariantCulture, $"Closemown, {p:0.##}"), u => new Guided(u, p))),
        new("all-knowing", "all-knowing", u => new AllKnowing(u)),
    ];

    /// <summary>Those named, in the roster's order; all where none is.</summary>
    public static IReadOnlyList<HeightContestant> Of(string? names, double[] probabilities)
    {
        var all = All(probabilities);
        if (names is null) return all;
        var wanted = names.Split(',');
        if (wanted.FirstOrDefault(w => all.All(c => c.Name != w)) is { } unknown)
            throw new ArgumentException($"There is no strategy {unknown}: {string.Join(", ", all.Select(c => c.Name).Distinct())}.");
        return [.. all.Where(c => wanted.Contains(c.Name))];
    }
}
