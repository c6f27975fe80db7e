using System.Globalization;

namespace Closemown.Tests.Turf;

/// <summary>A day of Checks/turf/seattle-2012.csv.</summary>
internal sealed record StationDay(DateOnly Date, double RainMm, double TMinC, double TMaxC)
{
    public double MeanC => (TMinC + TMaxC) / 2;

    public static IReadOnlyList<StationDay> Year { get; } =
        [.. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Checks", "turf", "seattle-2012.csv")).Skip(1).Select(l => l.Split(',')).Select(f =>
            new StationDay(DateOnly.Parse(f[0], CultureInfo.InvariantCulture), Number(f[1]), Number(f[3]), Number(f[2])))];

    public static IEnumerable<StationDay> July => Year.Where(d => d.Date.Month == 7);

    private static double Number(string s) => double.Parse(s, CultureInfo.InvariantCulture);
}
