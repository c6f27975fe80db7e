using System.Globalization;

namespace Closemown.Bench.Keeping;

/// <summary>An invented station's record from a seed, in the layout of GHCN-Daily with one element a row.</summary>
/// <remarks>A year's wave of warmth with a stray that lasts some days, rain on a third of the days, some values with a failed check, some rows missing: nothing is meant to be like any place.</remarks>
internal static class MadeStation
{
    private const string Station = "XX000000001";

    /// <summary>Writes the record.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="from">The first day.</param>
    /// <param name="days">How many days.</param>
    /// <param name="seed">The seed.</param>
    /// <returns>How many rows were written.</returns>
    public static int Write(TextWriter to, DateOnly from, int days, int seed)
    {
        var chance = new Random(seed);
        var (rows, stray) = (0, 0.0);
        for (var d = 0; d < days; d++)
        {
            var day = from.AddDays(d);
            stray = (0.8 * stray) + (2.5 * (chance.NextDouble() + chance.NextDouble() + chance.NextDouble() - 1.5));
            var mean = 10 - (8 * Math.Cos(2 * Math.PI * (day.DayOfYear - 20) / 365.25)) + stray;
            var half = 2 + (5 * chance.NextDouble());
            var rain = chance.NextDouble() < 0.35 ? -6 * Math.Log(1 - (0.999 * chance.NextDouble())) : 0;
            (string Element, double Tenths)[] values = [("TMAX", 10 * (mean + half)), ("TMIN", 10 * (mean - half)), ("TAVG", 10 * mean), ("PRCP", 10 * rain), ("AWND", 10 * (1 + (5 * chance.NextDouble())))];
            foreach (var (element, tenths) in values)
            {
                var luck = chance.Next(1000);
                if (luck == 0) continue;
                to.Write(string.Create(CultureInfo.InvariantCulture, $"{Station},{day:yyyyMMdd},{element},{Math.Round(tenths)},{(element == "PRCP" && luck < 20 && rain == 0 ? "T" : "")},{(luck == 1 ? "X" : "")},S,\n"));
                rows++;
            }
        }
        return rows;
    }
}
