using System.Globalization;
using Closemown.Bench.Workshop;

namespace Closemown.Bench.Green;

/// <summary>Daily weather of a season: three invented climates, and in every fourth season the record of a real station.</summary>
/// <remarks>The station: Checks/turf/seattle-2012-2015.csv, NOAA daily records. The climates: an annual wave, days that hang together, wet and dry spells, heat waves. Assumptions.</remarks>
internal static class GreenSky
{
    /// <summary>Days before the season, for the soil and the turf to settle.</summary>
    public const int Before = 30;

    private const double Persists = 0.75, WetStaysWet = 0.65;
    private static readonly (double Mean, double Amplitude, double Sd, double Wet)[] Climates = [(10, 6.5, 2.5, 0.45), (9, 12, 3.5, 0.33), (14, 8.5, 3, 0.2)];
    private static readonly Lazy<SkyDay[]> Station = new(Read);

    /// <summary>First day of the season: some day of spring.</summary>
    public static DateOnly First(int seed) => new DateOnly(2012 + (seed / 4 % 3), 3, 10).AddDays((int)(60 * Chance.Uniform(seed, GreenChance.Weather, -1)));

    public static SkyDay[] Of(int seed, int days)
    {
        var first = First(seed).AddDays(-Before);
        if (seed % 4 == 0) return Station.Value.AsSpan(first.DayNumber - new DateOnly(2012, 1, 1).DayNumber, days + Before).ToArray();
        var c = Climates[(seed % 4) - 1];
        var r = Chance.Stream(seed, GreenChance.Weather);
        var sky = new SkyDay[days + Before];
        var off = Chance.Normal(r, 0, c.Sd);
        var year = Chance.Normal(r, 0, 0.8);
        var (wet, heat) = (r.NextDouble() < c.Wet, 0);
        for (var i = 0; i < sky.Length; i++)
        {
            off = (Persists * off) + Chance.Normal(r, 0, c.Sd * Math.Sqrt(1 - (Persists * Persists)));
            wet = r.NextDouble() < (wet ? WetStaysWet : c.Wet * (1 - WetStaysWet) / (1 - c.Wet));
            var day = first.AddDays(i).DayOfYear;
            var summer = day is > 150 and < 250;
            if (heat > 0) heat--;
            else if (summer && r.NextDouble() < 1 / 50.0) heat = 3 + r.Next(5);
            var mean = c.Mean + year - (c.Amplitude * Math.Cos(2 * Math.PI * (day - 20) / 365)) + off + (heat > 0 ? 6 : 0) - (wet ? 1 : 0);
            var range = Math.Max(2, wet ? Chance.Normal(r, 6.5, 2) : Chance.Normal(r, 11, 2.5));
            var rain = wet && heat == 0 ? -6 * Math.Log(1 - r.NextDouble()) : 0;
            sky[i] = new(mean - (range / 2), mean + (range / 2), rain);
        }
        return sky;
    }

    private static SkyDay[] Read() =>
    [
        .. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Checks", "turf", "seattle-2012-2015.csv")).Skip(1).Select(l => l.Split(','))
            .Select(f => new SkyDay(N(f[3]), N(f[2]), N(f[1]))),
    ];

    private static double N(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
