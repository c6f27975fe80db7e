using System.Globalization;
using Closemown.Bench.Workshop;

namespace Closemown.Bench.Green;

/// <summary>
/// A day of a season as it was lived, to look at: it stood so in the morning, a share was taken where someone mowed, and it grew after
/// that.
/// </summary>
internal readonly record struct TraceDay(
    DateOnly Date, SkyDay Sky, bool Free, bool KeepOff, bool Wilting,
    double StoodMm, double? Share, double GrewMm, double BaseMm, double Stress, double WateredMm);

/// <summary>Seasons week by week, to see whether a world's greens are like greens.</summary>
internal static class GreenTrace
{
    private const int Week = 7;

    private static readonly (string Head, Func<TraceDay[], double> Of, string Form)[] Weekly =
    [
        ("°C", w => w.Average(d => d.Sky.MeanC), "0.0"), ("coldest", w => w.Min(d => d.Sky.TMinC), "0.0"),
        ("hottest", w => w.Max(d => d.Sky.TMaxC), "0.0"),
        ("rain, mm", w => w.Sum(d => d.Sky.RainMm), "0.0"), ("watered, mm", w => w.Sum(d => d.WateredMm), "0.0"),
        ("grew, mm a day", w => w.Average(d => d.GrewMm), "0.00"), ("most", w => w.Max(d => d.GrewMm), "0.00"),
        ("stood, mm", w => w.Average(d => d.StoodMm), "0.0"), ("base, mm", w => w.Average(d => d.BaseMm), "0.0"),
        ("stress", w => w.Average(d => d.Stress), "0.00"), ("wilting", w => w.Count(d => d.Wilting), "0"),
        ("kept off", w => w.Count(d => d.KeepOff), "0"),
        ("there", w => w.Count(d => d.Free), "0"), ("mown", w => w.Count(d => d.Share is not null), "0"),
        ("most share", w => w.Max(d => d.Share ?? 0), "0.00"),
    ];

    private static readonly (string Title, Func<TraceDay, double> Of)[] Daily =
    [
        ("grew, mm", d => d.GrewMm), ("stood, mm", d => d.StoodMm), ("base, mm", d => d.BaseMm), ("stress", d => d.Stress),
        ("mean, °C", d => d.Sky.MeanC),
        ("rain, mm", d => d.Sky.RainMm),
    ];

    private static readonly (string Title, Func<TraceDay, double> Of)[] ASeason =
    [
        ("days wilting", d => d.Wilting ? 1 : 0), ("kept off", d => d.KeepOff ? 1 : 0), ("there", d => d.Free ? 1 : 0),
        ("mm of rain", d => d.Sky.RainMm),
        ("mm watered", d => d.WateredMm), ("days with stress over 1", d => d.Stress > 1 ? 1 : 0), ("over 2", d => d.Stress > 2 ? 1 : 0),
    ];

    private static readonly double[] Points = [0.05, 0.25, 0.5, 0.75, 0.95, 0.99];

    public static void Print(IReadOnlyList<TraceDay> days)
    {
        var lines = new List<string[]> { ([.. Weekly.Select(c => c.Head).Prepend("week from")]) };
        foreach (var w in days.Chunk(Week))
        {
            var from = w[0].Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
            lines.Add([from, .. Weekly.Select(c => Table.Number(c.Of(w), c.Form))]);
        }
        Table.Write(lines);
    }

    /// <summary>All days of several seasons together, as points of their distribution.</summary>
    public static void Summary(IReadOnlyList<IReadOnlyList<TraceDay>> seasons)
    {
        var all = seasons.SelectMany(s => s).ToList();
        var lines = new List<string[]> { ([.. Points.Select(q => $"{Table.Number(100 * q)} %").Prepend("all days")]) };
        foreach (var (title, of) in Daily)
        {
            var sorted = all.Select(of).Order().ToArray();
            lines.Add([title, .. Points.Select(q => Table.Number(sorted[(int)(q * (sorted.Length - 1))], "0.00"))]);
        }
        Table.Write(lines);
        var sums = ASeason.Select(x => $"{Table.Number(all.Sum(x.Of) / seasons.Count, "0.0")} {x.Title}");
        Console.WriteLine($"a season: {string.Join(", ", sums)}");
        Console.WriteLine();
    }
}
