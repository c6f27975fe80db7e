using Closemown.Bench.Workshop.Strategies;

namespace Closemown.Bench.Workshop;

/// <summary>Whole first sittings as they are typed and answered, so that a person can judge their manners.</summary>
internal sealed class EveningPrinted : ISeasonWatch
{
    private static readonly (string Name, string Title, double[] Ends, double Bow)[] Mowers =
    [
        ("far", "far out all along", [110, 110], 0),
        ("one-end", "one end far", [12, 100], 0),
        ("hollow", "hollow knife", [6, 6], 40),
    ];

    private CuttingUnit? unit;

    /// <summary>Prints the sitting of each mower, or of that named by --start.</summary>
    public static int Print(Options o, int seed)
    {
        var (c, set) = (o.Circumstances(), o.Settings);
        foreach (var (_, title, ends, bow) in o.Named("--start", Mowers, m => m.Name))
        {
            Console.WriteLine(title);
            var made = UnitMake.Of(seed, c, asOwn: false) with { Ends = ends, Bow = bow, Edges = [5, 5, 5] };
            Season.Of(made, c, 1, _ => new Guided(set, own: false), set, new EveningPrinted());
            Console.WriteLine();
        }
        return 0;
    }

    public void Begins(CuttingUnit unit, BenchWork bench, IStrategy strategy)
    {
        this.unit = unit;
        Console.WriteLine($"  (truly {StepText.Truth(unit)})");
        var guided = (Guided)strategy;
        guided.Heard = step => Console.WriteLine($"  {(string)step["say"]!}");
        guided.Wrote = (entry, step) =>
        {
            if (step is not null) Console.WriteLine($"> {StepText.Of(entry)}");
        };
    }

    public void BeforeMowing(int mowing, double minutes, IReadOnlyList<Said> said) =>
        Console.WriteLine($"  (truly {StepText.Truth(unit!)}, {(Loss.InTolerance(unit!) ? "in tolerance" : "OUT of tolerance")} after {Table.Number(minutes, "0.0")} min)");

    public void AfterMowing(Outing outing)
    {
    }
}
