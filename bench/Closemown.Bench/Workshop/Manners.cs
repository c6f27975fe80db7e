namespace Closemown.Bench.Workshop;

/// <summary>How sittings went by what a mechanic would look at: what was asked twice, what followed a heavy touch, whether the strip came last.</summary>
internal static class Manners
{
    private static readonly (string Head, Func<Season[], string> Cell)[] Columns =
    [
        ("steps", s => Table.Mean(s, m => m.Sitting.Steps).Text("0.00")),
        ("asked again, nothing changed", s => Table.Mean(s, m => m.Sitting.Repeats).Text("0.00")),
        ("heavy, backed off at once", s => Share(s, m => m.Sitting.BackedOff, m => m.Sitting.Heavy)),
        ("changed", s => Count(s, m => m.Sitting.Mows && m.Sitting.Changed)),
        ("then mow without a strip", s => Count(s, m => m.Sitting.Mows && !m.Sitting.StripLast)),
        ("without feeling both ends", s => Count(s, m => m.Sitting.Mows && !m.Sitting.FeltLast)),
        ("no mow", s => Count(s, m => !m.Sitting.Mows)),
        ("cut everywhere before", s => Count(s, m => m.CutBefore)),
        ("steps then, median", s => Median([.. s.SelectMany(u => u.Mowings).Where(m => m.CutBefore).Select(m => (double)m.Sitting.Steps)])),
    ];

    public static void Print(IReadOnlyList<(string Title, Season[] Seasons)> rows)
    {
        var lines = new List<string[]> { ([.. Columns.Select(c => c.Head).Prepend("a sitting")]) };
        lines.AddRange(rows.Select(r => (string[])[r.Title, .. Columns.Select(c => c.Cell(r.Seasons))]));
        Table.Write(lines);
    }

    public static string Median(IReadOnlyList<double> v) => v.Count == 0 ? "–" : Table.Number(Middle(v), "0.0");

    private static double Middle(IReadOnlyList<double> v)
    {
        double[] sorted = [.. v.Order()];
        return (sorted[(v.Count - 1) / 2] + sorted[v.Count / 2]) / 2;
    }

    private static string Count(Season[] seasons, Func<Mowing, bool> which) => Table.Number(seasons.Sum(s => s.Mowings.Count(which)));

    private static string Share(Season[] seasons, Func<Mowing, int> part, Func<Mowing, int> whole)
    {
        var (some, all) = (seasons.Sum(s => s.Mowings.Sum(part)), seasons.Sum(s => s.Mowings.Sum(whole)));
        return all == 0 ? "–" : $"{Table.Number((double)some / all, "0.00")} of {all}";
    }
}
