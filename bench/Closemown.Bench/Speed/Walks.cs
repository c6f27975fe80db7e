using Closemown.Steel;

namespace Closemown.Bench.Speed;

/// <summary>What walking through a long book costs: the chain and one pass, the grid of scatter besides, and the rivals besides.</summary>
internal static class Walks
{
    private static readonly (string What, LearningOptions Learned)[] Kinds =
    [
        ("nothing learned of readings", new LearningOptions(Rivals: false, Scatter: false)),
        ("scatter grid", new LearningOptions(Rivals: false)),
        ("rivals", new LearningOptions(Scatter: false)),
        ("scatter grid and rivals", LearningOptions.All),
    ];

    /// <param name="n">Entries.</param>
    public static void Print(int n)
    {
        var entries = InventedBook.Of(n);
        foreach (var (what, learned) in Kinds)
            Console.WriteLine($"| {n} entries: walked through, {what} | {Timing.Of(() => UnitTrack.Of("unit", entries, learned), 9)} | |");
    }
}
