using System.Text.Json;
using static Closemown.Tests.Book.FerncombeLine;

namespace Closemown.Tests.Book;

/// <summary>What was done to Ferncombe's green beside mowing, made from a seed by rules of this file: where it lies, feed each fourth week, water in dry spells, cans set out once, heights read before mowing.</summary>
internal static class FerncombeCare
{
    private const ulong Seed = 20260329;
    private const double BestMmADay = 0.55, DryMm = 14, WaterMm = 6;
    private static readonly TimeSpan Summer = TimeSpan.FromHours(1);
    private static readonly DateOnly First = new(2026, 3, 29), Last = new(2026, 8, 21);

    /// <summary>The lines of the demo's file of care.</summary>
    /// <param name="weather">The lines of the weather.</param>
    /// <param name="book">The lines of the demo's book, for the days on which it was mown and the heights left.</param>
    public static IEnumerable<string> Lines(IEnumerable<string> weather, IEnumerable<string> book)
    {
        var chance = new Closemown.Estimation.SeededNormal(Seed);
        var days = weather.Select(Parsed).Where(w => !w.TryGetProperty("forecast", out _)).ToDictionary(w => DateOnly.Parse(w.GetProperty("date").GetString()!, System.Globalization.CultureInfo.InvariantCulture));
        var (mown, left) = Mown(book);
        yield return Line(First, 8, "\"kind\":\"area\",\"area\":\"green\",\"by\":\"early\",\"lat\":51.6,\"zone\":\"Europe/London\",\"altitudeM\":90");
        double missing = 0, grown = 0;
        DateOnly? last = null;
        var cans = false;
        for (var day = First; day <= Last; day = day.AddDays(1))
        {
            var w = days[day];
            double low = w.GetProperty("tMinC").GetDouble(), high = w.GetProperty("tMaxC").GetDouble(), rain = w.GetProperty("rainMm").GetDouble(), mean = (low + high) / 2;
            if (day.DayOfWeek == DayOfWeek.Monday && (day.DayNumber - First.DayNumber) % 28 < 7) yield return Line(day, 18, "\"kind\":\"feed\",\"area\":\"green\",\"by\":\"early\",\"nGm2\":1.4,\"label\":\"as printed on the bag\"");
            if (mown.Contains(day))
            {
                // Now and then the ruler comes out before the mower.
                if (last is not null && chance.Next() > 0.85)
                {
                    var step = day.Month < 7 ? 0.5 : 0.1;
                    var spots = Enumerable.Range(0, 5).Select(_ => N(Math.Round((Left(left, day) + grown + (0.35 * chance.Next())) / step) * step));
                    yield return Line(day, 9, $"\"kind\":\"canopy\",\"area\":\"green\",\"by\":\"early\",\"mm\":[{string.Join(',', spots)}],\"how\":\"{(step > 0.2 ? "ruler" : "prism")}\",\"when\":\"before\",\"stepMm\":{step.ToString(System.Globalization.CultureInfo.InvariantCulture)}");
                }
                (last, grown) = (day, 0);
            }
            grown += BestMmADay * Math.Clamp((mean - 5) / 12, 0, 1) * Math.Exp(0.2 * chance.Next());
            missing = Math.Max(0, missing - rain + Math.Max(0, 0.17 * mean));
            if (missing <= DryMm) continue;
            missing -= WaterMm;
            var caught = cans ? "" : ",\"cansMm\":[6.5,5.5,7,4.5,6,6.5,5,7]";
            cans = true;
            yield return Line(day, 20, $"\"kind\":\"water\",\"area\":\"green\",\"by\":\"late\",\"mm\":{N(WaterMm)}{caught}");
        }
    }

    private static (HashSet<DateOnly> Days, List<(DateOnly Day, double Mm)> Left) Mown(IEnumerable<string> book)
    {
        HashSet<DateOnly> days = [];
        List<(DateOnly, double)> left = [];
        foreach (var e in book.Select(Parsed))
        {
            var day = DateOnly.FromDateTime(e.GetProperty("at").GetDateTimeOffset().DateTime);
            if (e.GetProperty("kind").GetString() == "mow") days.Add(day);
            if (e.GetProperty("kind").GetString() == "canopy") left.Add((day, e.GetProperty("mm").EnumerateArray().Average(x => x.GetDouble())));
        }
        return (days, left);
    }

    /// <summary>What the mower left about then: the last reading after a mowing up to that day, the first before any.</summary>
    private static double Left(List<(DateOnly Day, double Mm)> left, DateOnly day) => left.LastOrDefault(l => l.Day < day, left[0]).Mm;

    private static string Line(DateOnly day, int hour, string said) => Of(new DateTimeOffset(day.ToDateTime(new(hour, 0)), Summer), said);

    private static JsonElement Parsed(string line) => JsonDocument.Parse(line).RootElement;
}
