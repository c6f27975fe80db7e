using System.Globalization;

namespace Closemown.Bench.Workshop;

/// <summary>Seasons as tables: how a strategy did, and how that compares with the strong rule unit by unit.</summary>
internal static class Table
{
    private static readonly (string Head, Func<Season[], string> Cell)[] Columns =
    [
        ("in tolerance", s => Mean(s, m => m.InTolerance ? 1 : 0).Text("0.000")),
        ("worst tenth", s => OverUnits.WorstTenth([.. s.Select(u => u.Mowings.Average(m => m.InTolerance ? 1.0 : 0))]).Text("0.00")),
        ("cut clean", s => Mean(s, m => m.Clean).Text("0.000")),
        ("gap, µm", s => Mean(s, m => m.GapUm).Text("0.0")),
        ("edge, µm", s => Mean(s, m => m.EdgeUm).Text("0.0")),
        ("tilt, µm", s => Mean(s, m => m.TiltUm).Text("0.0")),
        ("minutes", s => Mean(s, m => m.Minutes).Text("0.00")),
        ("from the 6th", s => Mean(s, m => m.Minutes, from: 5).Text("0.00")),
        ("steel, µm", s => Mean(s, m => m.SteelUm).Text("0.00")),
        ("pressed, µm", s => Mean(s, m => m.PressedUm).Text("0.00")),
        ("lapped, min", s => Mean(s, m => m.LapMinutes).Text("0.00")),
        ("all in minutes", s => Mean(s, m => m.Loss).Text("0.00")),
    ];

    public static void Print(IReadOnlyList<(string Title, Season[] Seasons)> rows)
    {
        var lines = new List<string[]> { ([.. Columns.Select(c => c.Head).Prepend("a mowing")]) };
        lines.AddRange(rows.Select(r => (string[])[r.Title, .. Columns.Select(c => c.Cell(r.Seasons))]));
        Write(lines);
    }

    /// <summary>Each against one of them on the same units.</summary>
    public static void PrintAgainst(string name, Season[] other, IReadOnlyList<(string Title, Season[] Seasons)> rows)
    {
        var lines = new List<string[]> { (string[])[$"against {name}", "out of tolerance, ratio", "minutes, ratio", "cut clean, difference", "steel, ratio", "all in minutes, difference"] };
        foreach (var (title, seasons) in rows)
        {
            lines.Add([
                title,
                Ratio(m => m.InTolerance ? 0 : 1), Ratio(m => m.Minutes), Difference(m => m.Clean, "+0.000;-0.000"), Ratio(m => m.SteelUm), Difference(m => m.Loss, "+0.00;-0.00")]);
            string Ratio(Func<Mowing, double> of) => OverUnits.Ratio(PerUnit(seasons, of), PerUnit(other, of)).Text("0.00");
            string Difference(Func<Mowing, double> of, string form) => OverUnits.Mean([.. PerUnit(seasons, of).Zip(PerUnit(other, of), (a, b) => a - b)]).Text(form).Replace("± +", "± ", StringComparison.Ordinal);
        }
        Write(lines);
    }

    public static OverUnits Mean(Season[] seasons, Func<Mowing, double> of, int from = 0) => OverUnits.Mean(PerUnit(seasons, of, from));

    private static double[] PerUnit(Season[] seasons, Func<Mowing, double> of, int from = 0) => [.. seasons.Where(s => s.Mowings.Count > from).Select(s => s.Mowings.Skip(from).Average(of))];

    /// <summary>Columns as wide as what stands in them.</summary>
    public static void Write(IReadOnlyList<string[]> lines)
    {
        var width = Enumerable.Range(0, lines[0].Length).Select(c => lines.Max(l => l[c].Length)).ToArray();
        foreach (var l in lines) Console.WriteLine(string.Join("  ", l.Select((cell, c) => cell.PadRight(width[c]))).TrimEnd());
        Console.WriteLine();
    }

    public static string Number(double v, string form = "0.###") => v.ToString(form, CultureInfo.InvariantCulture);
}
