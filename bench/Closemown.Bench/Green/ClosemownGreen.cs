using System.Globalization;
using System.Text.Json.Nodes;
using Closemown.Advice;
using Closemown.Bench.Workshop;

namespace Closemown.Bench.Green;

/// <summary>Closemown as a person has it: entries in, the plan out, through the pipe's own code.</summary>
internal sealed class ClosemownGreen : IGreenStrategy, ISays
{
    /// <summary>Nobody sets a mower anew for less.</summary>
    private const double SmallestMm = 0.08;

    /// <summary>The green of the bench grows a whole day's growth after the day's mowing: what is said of a day is therefore said as it begins.</summary>
    private const double AskedHour = 0.05, ReadHour = 0.1, LookedHour = 0.15, MownHour = 0.2, AfterHour = 0.25, BoxHour = 0.3, ScalpHour = 0.35;

    private static readonly string[] Colours = ["green", "pale", "purple", "straw"];
    private readonly Talk talk = new(AdviceSettings.Default);
    private DateOnly first;
    private (double Mm, DateOnly? By) wished;
    private bool begun;

    public (double Mean, double Sd)? Said { get; private set; }

    /// <inheritdoc/>
    /// <remarks>
    /// Its answers say a height on a day and a rate, not the growth of a week: this is the height said for a week on less that of now, and
    /// its spread what of the spread came since.
    /// </remarks>
    public (double Mean, double Sd)? WeekGrowth { get; private set; }

    public (double Mean, double Sd)? InAWeek { get; private set; }

    public WishPromise? Promise { get; private set; }

    public double? RateMm { get; private set; }

    public Decision Day(GreenDay d)
    {
        (Said, WeekGrowth, InAWeek, Promise) = (null, null, null, null);
        if (!begun) Begin(d);
        Yesterday(d);
        if (wished != (d.WishMm, d.WishBy))
        {
            wished = (d.WishMm, d.WishBy);
            Write(d.Number, AskedHour, $"\"kind\":\"wish\",\"area\":\"green\",\"cutMm\":{N(d.WishMm)}{(d.WishBy is { } by ? $",\"byDate\":\"{Date(by)}\"" : "")}");
        }
        for (var k = 0; k < d.Forecast.Length; k++) Write(d.Number, AskedHour, Weather(d.Date.AddDays(k), d.Forecast[k], forecast: true));
        if (!d.Free) return Decision.None;
        // Asked before today's reading, so that what is said is a forecast.
        var turf = Turf(d.Date);
        if ((bool)turf["canopyKnown"]!)
        {
            Said = Stands(turf);
            SayWeek(d.Date, Said.Value);
        }
        RateMm = (double)turf["fullRateMmPerDay"]!["mean"]!;
        // Where too little is known the answer is to read first.
        var unknown = !d.KeepOff && !(bool)turf["canopyKnown"]!;
        if ((d.CanopyMm ?? (unknown ? d.Read() : null)) is { } mm)
            Write(d.Number, ReadHour, FiveSpots("before", mm));
        var look = (d.StressSeen is { } s ? $",\"colour\":\"{Colours[s]}\"" : "") + (d.Wilting ? ",\"footprints\":true" : "") + (d.KeepOff ? ",\"frost\":true" : "");
        if (look.Length > 0) Write(d.Number, LookedHour, $"\"kind\":\"look\",\"area\":\"green\"{look}");
        if (d.KeepOff) return Decision.None;
        var today = Date(d.Date);
        var answer = talk.Ask($$"""{"ask":"plan","area":"green","from":"{{today}}","days":14,"daysOn":["{{today}}"]}""");
        // It tells no day past the year that it plans.
        if ((string?)answer["wish"]!["reached"] is { } reached) Promise = new(Read(reached), ReckonedOn: false);
        var plan = answer["plan"]![0]!;
        if (!(bool)plan["mow"]!) return Decision.None;
        // The plan speaks of the cut made; the keeper sets what has so far given it.
        var move = (double)plan["cutMm"]! - (double)turf["cutMm"]!["mean"]!;
        return new(true, Math.Abs(move) < SmallestMm ? d.SetMm : Math.Round(d.SetMm + move, 2));
    }

    private JsonNode Turf(DateOnly date) => talk.Ask($$"""{"ask":"turf","area":"green","date":"{{Date(date)}}"}""")["turf"]!;

    private static (double Mean, double Sd) Stands(JsonNode turf) => ((double)turf["canopyMm"]!["mean"]!, (double)turf["canopyMm"]!["sd"]!);

    /// <summary>Of a day to come noon is told: the beginning of the day a week on lies half-way between two noons.</summary>
    private void SayWeek(DateOnly today, (double Mean, double Sd) now)
    {
        var (before, after) = (Stands(Turf(today.AddDays(6))), Stands(Turf(today.AddDays(7))));
        var then = (Mean: (before.Mean + after.Mean) / 2, Sd: (before.Sd + after.Sd) / 2);
        (InAWeek, WeekGrowth) = (then, (then.Mean - now.Mean, Math.Sqrt(Math.Max(0, (then.Sd * then.Sd) - (now.Sd * now.Sd)))));
    }

    private void Begin(GreenDay d)
    {
        begun = true;
        first = d.Date;
        var days = string.Join(',', d.Weekdays.Select(w => $"\"{w.ToString()[..3].ToLowerInvariant()}\""));
        var fixtures = d.Fixtures.Count == 0 ? "" : $",\"fixtures\":[{string.Join(',', d.Fixtures.Select(f => $"\"{Date(f)}\""))}]";
        Write(-7, 12, "\"kind\":\"area\",\"area\":\"green\",\"grass\":\"cool\",\"species\":\"creeping bent\",\"lat\":50,\"m2\":200");
        Write(-7, 12.1, $"\"kind\":\"wish\",\"area\":\"green\",\"cutMm\":{N(d.WishMm)},\"weekdays\":[{days}]{fixtures}");
        wished = (d.WishMm, d.WishBy);
        Write(-6, 13, $"\"kind\":\"mow\",\"area\":\"green\",\"unit\":\"unit\",\"hours\":0.5,\"cutMm\":{N(d.SetMm)}");
        // What any keeper sees at the start of a season: about a millimetre over the cut.
        Write(-1, 13.1, $"\"kind\":\"canopy\",\"area\":\"green\",\"when\":\"before\",\"mm\":{N(d.SetMm + 1)},\"how\":\"card\"");
    }

    private void Yesterday(GreenDay d)
    {
        Write(d.Number - 1, 23, Weather(d.Date.AddDays(-1), d.Yesterday, forecast: false));
        if (d.MownYesterday is { } m)
        {
            Write(d.Number - 1, MownHour, $"\"kind\":\"mow\",\"area\":\"green\",\"unit\":\"unit\",\"hours\":0.5,\"cutMm\":{N(m.SetMm)},\"confirmed\":[\"cutMm\"]");
            if (m.AfterMm is { } after) Write(d.Number - 1, AfterHour, FiveSpots("after", after));
            if (m.LitresM2 * 200 is > 0.05 and var litres) Write(d.Number - 1, BoxHour, $"\"kind\":\"clippings\",\"area\":\"green\",\"litres\":{N(litres)}");
            if (d.ScalpSeen) Write(d.Number - 1, ScalpHour, "\"kind\":\"look\",\"area\":\"green\",\"scalpPct\":3");
        }
        if (d.WateredMm > 0) Write(d.Number - 1, 18, $"\"kind\":\"water\",\"area\":\"green\",\"mm\":{N(d.WateredMm)}");
    }

    private static string FiveSpots(string when, double mm) =>
        $"\"kind\":\"canopy\",\"area\":\"green\",\"when\":\"{when}\",\"how\":\"prism\",\"stepMm\":0.05,"
        + $"\"mm\":[{string.Join(',', Enumerable.Repeat(N(mm), 5))}]";

    /// <summary>A station's values are taken as they are: nobody asks again whether a forecast of 43 °C was meant.</summary>
    private static string Weather(DateOnly date, SkyDay w, bool forecast)
    {
        var (tMin, tMax) = (N(w.TMinC), N(Math.Max(w.TMinC, w.TMaxC)));
        return $"\"kind\":\"weather\",\"area\":\"green\",\"date\":\"{Date(date)}\",\"tMinC\":{tMin},\"tMaxC\":{tMax},"
            + $"\"rainMm\":{N(w.RainMm)},\"source\":\"station\",\"confirmed\":[\"tMinC\",\"tMaxC\"]{(forecast ? ",\"forecast\":true" : "")}";
    }

    private void Write(int day, double hour, string fields) =>
        talk.Write($$"""{"at":"{{first.AddDays(day).ToDateTime(TimeOnly.MinValue).AddHours(hour).ToString("yyyy-MM-ddTHH:mm:ss", CultureInfo.InvariantCulture)}}Z",{{fields}}}""");

    private static string Date(DateOnly d) => d.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static DateOnly Read(string date) => DateOnly.ParseExact(date, "yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string N(double x) => Math.Round(x, 3).ToString(CultureInfo.InvariantCulture);
}
