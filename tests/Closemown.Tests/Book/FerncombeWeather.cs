using static Closemown.Tests.Book.FerncombeLine;

namespace Closemown.Tests.Book;

/// <summary>Two seasons of invented weather of Ferncombe, made from a seed: a mild wet place with a cold snap, a dry summer and a week of forecast at the end.</summary>
internal static class FerncombeWeather
{
    private const ulong Seed = 20260328;
    private static readonly DateOnly First = new(2025, 3, 1), Last = new(2026, 8, 22);
    private const int ForecastDays = 7;

    /// <summary>The lines of the demo's weather file.</summary>
    public static IEnumerable<string> Lines()
    {
        var chance = new Closemown.Estimation.SeededNormal(Seed);
        double odd = 0;
        var wet = false;
        for (var day = First; day <= Last.AddDays(ForecastDays); day = day.AddDays(1))
        {
            odd = (0.75 * odd) + (1.7 * chance.Next());
            double rainy = chance.Next(), amount = chance.Next(), range = chance.Next(), wind = chance.Next(), sun = chance.Next();
            var dry = day.Month is 6 or 7 && day.Year == 2025;
            wet = rainy > (dry ? 1.1 : wet ? -0.15 : 0.6);
            var mean = 10.4 - (6.2 * Math.Cos(2 * Math.PI * (day.DayOfYear - 28) / 365.25)) + odd - (wet ? 0.8 : 0);
            var half = Math.Max(1.5, (wet ? 3 : 4.8) + (0.8 * range));
            var rain = wet ? Math.Max(0.2, Math.Exp(1.1 + (0.9 * amount))) : 0;
            var hours = 12 - (4.2 * Math.Cos(2 * Math.PI * (day.DayOfYear + 10) / 365.25));
            var shone = Math.Clamp(hours * ((wet ? 0.2 : 0.55) + (0.12 * sun)), 0, hours - 0.5);
            yield return Line(day, mean - half, mean + half, rain, Math.Clamp(2.4 + (0.8 * wind), 0.3, 7), Math.Clamp((wet ? 88 : 74) + (4 * range), 45, 98), shone, day > Last);
        }
    }

    private static string Line(DateOnly day, double low, double high, double rain, double wind, double humidity, double sun, bool forecast)
    {
        var said = $"\"kind\":\"weather\",\"area\":\"green\",\"date\":\"{day:yyyy-MM-dd}\",\"tMinC\":{N(low)},\"tMaxC\":{N(high)},\"rhPct\":{N(humidity)},\"rainMm\":{N(rain)},\"windMs\":{N(wind)},\"sunH\":{N(sun)},\"source\":\"invented station\"{(forecast ? ",\"forecast\":true" : "")}";
        var at = new DateTimeOffset((forecast ? Last : day).ToDateTime(new(20, 0)), TimeSpan.Zero);
        return Of(at, said);
    }
}
