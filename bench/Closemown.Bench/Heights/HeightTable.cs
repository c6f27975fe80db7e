using Closemown.Bench.Workshop;

namespace Closemown.Bench.Heights;

/// <summary>Settings as tables: how a strategy did, how that compares with another unit by unit, and whether what was said held.</summary>
internal static class HeightTable
{
    private static readonly (int From, int To)[] Pools = [(1, 1), (2, 4), (5, int.MaxValue)];

    private static readonly (string Head, Func<IReadOnlyList<Setting>[], string> Cell)[] Columns =
    [
        ("both within", u => Mean(u, s => s.Within ? 1 : 0).Text("0.000")),
        ("from the 2nd", u => Mean(u, s => s.Within ? 1 : 0, 2).Text("0.000")),
        ("pairs read, 1st", u => Mean(u, s => s.Pairs, 1, 1).Text("0.00")),
        ("from the 2nd", u => Mean(u, s => s.Pairs, 2).Text("0.00")),
        ("most", u => Table.Number(u.Max(x => x.Max(s => s.Pairs)))),
        ("minutes, 1st", u => Mean(u, s => s.Minutes, 1, 1).Text("0.0")),
        ("from the 2nd", u => Mean(u, s => s.Minutes, 2).Text("0.0")),
        ("off left, mm RMS", u => Table.Number(Math.Sqrt(Mean(u, s => s.OffLeftMm * s.OffLeftMm).Value), "0.000")),
        ("right", u => Table.Number(Math.Sqrt(Mean(u, s => s.OffRightMm * s.OffRightMm).Value), "0.000")),
    ];

    public static void Print(IReadOnlyList<(string Title, IReadOnlyList<Setting>[] Units)> rows)
    {
        var lines = new List<string[]> { ([.. Columns.Select(c => c.Head).Prepend("a setting")]) };
        lines.AddRange(rows.Select(r => (string[])[r.Title, .. Columns.Select(c => c.Cell(r.Units))]));
        Table.Write(lines);
    }

    /// <summary>Each against one of them on the same units: all settings, and from the second on.</summary>
    public static void PrintAgainst(string name, IReadOnlyList<Setting>[] other, IReadOnlyList<(string Title, IReadOnlyList<Setting>[] Units)> rows)
    {
        var lines = new List<string[]> { (string[])[$"against {name}", "not within, ratio", "pairs read, ratio", "minutes, ratio", "2nd on: not within", "pairs read", "minutes"] };
        foreach (var (title, units) in rows)
        {
            lines.Add([title, Ratio(s => s.Within ? 0 : 1), Ratio(s => s.Pairs), Ratio(s => s.Minutes), Ratio(s => s.Within ? 0 : 1, 2), Ratio(s => s.Pairs, 2), Ratio(s => s.Minutes, 2)]);
            string Ratio(Func<Setting, double> of, int from = 1) => OverUnits.Ratio(PerUnit(units, of, from), PerUnit(other, of, from)).Text("0.00");
        }
        Table.Write(lines);
    }

    /// <summary>How often what was said with 50 and 90 in 100 held, with the error and the spread said.</summary>
    public static void PrintSaid(string title, HeightSaid[][] units, (int From, int To)[]? pools = null)
    {
        pools ??= Pools;
        var lines = new List<string[]> { ([.. pools.Select(p => $"{Span(p)}: 50 %, 90 %; error, spread said").Prepend($"{title}: held")]) };
        foreach (var what in units.SelectMany(u => u).Select(s => s.What).Distinct()) lines.Add([what, .. pools.Select(p => Cell(units, what, p))]);
        Table.Write(lines);
    }

    private static string Span((int From, int To) p) => p.From == p.To ? $"no. {p.From}" : p.To == int.MaxValue ? $"{p.From} on" : $"{p.From}–{p.To}";

    private static string Cell(HeightSaid[][] all, string what, (int From, int To) pool)
    {
        var units = all.Select(u => u.Where(s => s.What == what && s.When >= pool.From && s.When <= pool.To).ToArray()).Where(u => u.Length > 0).ToArray();
        if (units.Length == 0) return "–";
        double[] said = [.. units.Select(u => (double)u.Length)];
        string Share(Func<HeightSaid, bool> held) => OverUnits.Ratio([.. units.Select(u => (double)u.Count(held))], said).Text("0.000");
        var flat = units.SelectMany(u => u).ToArray();
        var error = Math.Sqrt(flat.Average(s => (s.Truth - s.Mean) * (s.Truth - s.Mean)));
        var spread = Math.Sqrt(flat.Average(s => s.Sd * s.Sd));
        return $"{Share(s => s.Half)}, {Share(s => s.Ninety)}; {Table.Number(error, "0.000")}, {Table.Number(spread, "0.000")}";
    }

    private static OverUnits Mean(IReadOnlyList<Setting>[] units, Func<Setting, double> of, int from = 1, int to = int.MaxValue) => OverUnits.Mean(PerUnit(units, of, from, to));

    private static double[] PerUnit(IReadOnlyList<Setting>[] units, Func<Setting, double> of, int from = 1, int to = int.MaxValue) =>
        [.. units.Select(u => u.Where(s => s.Number >= from && s.Number <= to).Select(of).DefaultIfEmpty(double.NaN).Average())];
}
