namespace Closemown.Bench.Workshop;

/// <summary>How often what Closemown said with 50, 90 and 99 in 100 held, by how far the season was on.</summary>
internal static class Coverage
{
    private static readonly (int From, int To)[] Pools = [(2, 5), (6, 15), (16, 40)];

    /// <param name="seasons">The seasons.</param>
    /// <param name="whats">Which numbers; all where null.</param>
    public static void Print(Season[] seasons, IReadOnlyList<string>? whats = null)
    {
        var lines = new List<string[]> { ([.. Pools.Select(p => $"mowings {p.From}–{p.To}: 50 %, 90 %, 99 %; error, spread said").Prepend("what was said held")]) };
        foreach (var what in whats ?? [.. seasons.SelectMany(s => s.Said).Select(s => s.What).Distinct()])
            lines.Add([what, .. Pools.Select(p => Cell(seasons, what, p.From, p.To))]);
        Table.Write(lines);
    }

    /// <summary>Only clearance and edge, from the second mowing on, for several variants.</summary>
    public static void PrintShort(IReadOnlyList<(string Title, Season[] Seasons)> rows)
    {
        string[] whats = ["clearance", "edge"];
        var lines = new List<string[]> { ([.. whats.Select(w => $"{w}: 50 %, 90 %, 99 %; error, spread said").Prepend("what was said held")]) };
        foreach (var (title, seasons) in rows) lines.Add([title, .. whats.Select(w => Cell(seasons, w, 2, int.MaxValue))]);
        Table.Write(lines);
    }

    private static string Cell(Season[] seasons, string what, int from, int to)
    {
        var units = seasons.Select(s => s.Said.Where(x => x.What == what && x.Mowing >= from && x.Mowing <= to).ToArray()).Where(u => u.Length > 0).ToArray();
        if (units.Length == 0) return "–";
        double[] said = [.. units.Select(u => (double)u.Length)];
        var held = new[] { 50, 90, 99 }.Select(p => OverUnits.Ratio([.. units.Select(u => (double)u.Count(x => x.Holds(p)))], said).Text("0.00"));
        var all = units.SelectMany(u => u).ToArray();
        var error = Math.Sqrt(all.Average(x => (x.Truth - x.Mean) * (x.Truth - x.Mean)));
        var spread = Math.Sqrt(all.Average(x => x.Sd * x.Sd));
        return $"{string.Join(", ", held)}; {Table.Number(error, "0.0")}, {Table.Number(spread, "0.0")}";
    }
}
