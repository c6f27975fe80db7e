using System.Globalization;
using Closemown.Advice;

namespace Closemown.Bench.Workshop;

/// <summary>Units of the workshop under the strong rule and under Closemown, side by side in one table.</summary>
internal static class WorkshopRun
{
    /// <summary>Runs and prints. Arguments: --units N (8) --mowings N (16) --first SEED (1) --hours H (1) --blunt-mowings B (as set) --price P (1).</summary>
    public static int Print(string[] args)
    {
        double Option(string name, double byDefault) => Array.IndexOf(args, name) is var i and >= 0 && i + 1 < args.Length ? double.Parse(args[i + 1], CultureInfo.InvariantCulture) : byDefault;
        var (units, mowings, first, hours) = ((int)Option("--units", 8), (int)Option("--mowings", 16), (int)Option("--first", 1), Option("--hours", 1));
        var set = AdviceSettings.Default with { BluntMowings = Option("--blunt-mowings", AdviceSettings.Default.BluntMowings), PriceOfMinute = Option("--price", 1) };
        var seeds = Enumerable.Range(first, units).ToArray();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{units} units from an unknown start, {mowings} mowings of {hours} h each, ± one standard error over units"));
        Console.WriteLine("strategy     out of tolerance   cut clean        pressed, µm    minutes a mowing   lapped, min a mowing");
        Row("strong rule", [.. seeds.Select(s => Season.Of(new CuttingUnit(s, hours), mowings, StrongRule.Work, _ => { }))]);
        Row("Closemown", [.. seeds.Select(s =>
        {
            var person = new Guided(set);
            return Season.Of(new CuttingUnit(s, hours), mowings, person.Work, person.Mown);
        })]);
        return 0;
    }

    private static void Row(string name, Season[] seasons)
    {
        string Cell(Func<Season, double> of, string form)
        {
            var values = seasons.Select(of).ToArray();
            var mean = values.Average();
            var se = values.Length > 1 ? Math.Sqrt(values.Sum(v => (v - mean) * (v - mean)) / (values.Length - 1) / values.Length) : double.NaN;
            return $"{mean.ToString(form, CultureInfo.InvariantCulture)} ± {se.ToString(form, CultureInfo.InvariantCulture)}";
        }
        Console.WriteLine($"{name,-12} {Cell(s => s.Mowings.Average(m => m.InTolerance ? 0.0 : 1.0), "0.000"),-18} {Cell(s => s.Mowings.Average(m => m.Clean), "0.000"),-16} "
            + $"{Cell(s => s.Mowings.Average(m => m.PressedUm), "0.00"),-14} {Cell(s => s.Mowings.Average(m => m.Minutes), "0.00"),-18} {Cell(s => s.LappedMinutes / s.Mowings.Count, "0.00")}");
    }
}
