using Closemown.Bench.Workshop.Strategies;

namespace Closemown.Bench.Workshop;

/// <summary>How a mower stands, and what is known of it, when an evening at the bench begins.</summary>
/// <param name="Name">On the command line.</param>
/// <param name="Title">In tables.</param>
/// <param name="Before">Mowings that the same person has lived through with it before.</param>
/// <param name="SwathSeen">Whether the swath behind it was looked at before anything is asked.</param>
/// <param name="Make">The mower.</param>
internal sealed record Start(string Name, string Title, int Before, bool SwathSeen, Func<int, Circumstances, UnitMake> Make)
{
    private const int SeasonMowings = 20;

    public static IReadOnlyList<Start> All { get; } =
    [
        new("rebuilt", "rebuilt and unknown", 0, false, (seed, c) => UnitMake.Of(seed, c, asOwn: true)),
        new("used", "bought used and unknown", 0, false, (seed, c) => UnitMake.Of(seed, c, asOwn: false)),
        new("known", "well known after a season", SeasonMowings, false, (seed, c) => UnitMake.Of(seed, c)),
        new("cuts", "cuts everywhere with a clear gap", 0, true, Clear),
    ];

    /// <summary>The sitting of that start under a strategy, with the mowing after it.</summary>
    public Mowing Sit(int seed, Circumstances c, Contestant who, Advice.AdviceSettings set) =>
        Season.Of(Make(seed, c), c, Before + 1, who.Make, set, SwathSeen ? new SwathFirst() : null).Mowings[^1];

    /// <summary>Nothing in the book; level, sharp enough, well off the knife and well within what the strip and the turf forgive.</summary>
    private static UnitMake Clear(int seed, Circumstances c)
    {
        var r = Chance.Stream(seed, Chance.Of.Starts);
        double Between(double low, double high) => low + ((high - low) * r.NextDouble());
        var gap = Between(11, 17);
        return UnitMake.Of(seed, c, asOwn: false) with
        {
            Ends = [gap + Between(-2, 2), gap + Between(-2, 2)],
            Edges = [Between(3, 7), Between(3, 7), Between(3, 7)],
            Bow = Between(-2, 2),
        };
    }

    /// <summary>Who mowed with it lately knows how the swath looked.</summary>
    private sealed class SwathFirst : ISeasonWatch
    {
        public void Begins(CuttingUnit unit, BenchWork bench, IStrategy strategy)
        {
            if (strategy is Guided guided) guided.SeesSwath(bench);
        }

        public void BeforeMowing(int mowing, double minutes, IReadOnlyList<Said> said)
        {
        }

        public void AfterMowing(Outing outing)
        {
        }
    }
}
