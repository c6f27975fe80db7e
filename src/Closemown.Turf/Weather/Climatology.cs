namespace Closemown.Turf;

/// <summary>A day as it usually is at this time of year.</summary>
/// <param name="MeanC">Mean temperature, °C.</param>
/// <param name="SdC">How far a day lies from it, °C.</param>
/// <param name="RangeC">Greatest less least temperature, °C.</param>
/// <param name="RainMm">Rain, mm a day on average.</param>
/// <param name="WetShare">Share of days with rain.</param>
public readonly record struct UsualDay(double MeanC, double SdC, double RangeC, double RainMm, double WetShare);

/// <summary>What the weather usually is by day of the year: from the area's own record where it reaches, else a plain temperate year.</summary>
/// <remarks>
/// The plain year is an assumption, no source: a mean of 10.5 °C, 7 °C either way, coldest four weeks after the shortest day, turned round south of the
/// equator; a day's range of 8 °C, a rainy day in three with 5 mm. Days of the record within 15 days of the date count, and ten days' worth of the plain year with them, so
/// that a short record leans on it.
/// </remarks>
public sealed class Climatology
{
    private const int Window = 15, Year = 366;
    private const double PlainWeight = 10;
    private const double PlainMeanC = 10.5, PlainSwingC = 7, PlainSdC = 3.2, PlainRangeC = 8, PlainWetShare = 0.35, PlainRainMm = 1.8;
    private const double WetFromMm = 0.2;
    private const int NorthColdestDay = 21;
    private readonly UsualDay[] usual = new UsualDay[Year + 1];

    private Climatology()
    {
    }

    /// <summary>Years of record, or parts of one, behind it.</summary>
    public double Years { get; private init; }

    /// <summary>Makes it from a record.</summary>
    /// <param name="record">The area's weather; forecasts do not count.</param>
    /// <param name="latitudeDeg">Latitude: only its sign matters.</param>
    public static Climatology Of(WeatherRecord record, double latitudeDeg)
    {
        ArgumentNullException.ThrowIfNull(record);
        var sums = new Sums[Year + 1];
        var days = 0;
        foreach (var d in record.Days)
        {
            if (d.Forecast) continue;
            ref var s = ref sums[d.Date.DayOfYear];
            if (d.MeanC is { } mean)
            {
                days++;
                s.N++;
                s.Mean += mean;
                s.Square += mean * mean;
            }
            if (d is { TMinC: { } low, TMaxC: { } high })
            {
                s.RangeN++;
                s.Range += high - low;
            }
            if (d.RainMm is { } rain)
            {
                s.RainN++;
                s.Rain += rain;
                if (rain >= WetFromMm) s.Wet++;
            }
        }
        var c = new Climatology { Years = days / 365.25 };
        for (var day = 1; day <= Year; day++) c.usual[day] = Around(sums, day, Plain(day, latitudeDeg));
        return c;
    }

    /// <summary>A usual day at a date.</summary>
    public UsualDay On(DateOnly date) => usual[date.DayOfYear];

    private static UsualDay Plain(int day, double latitudeDeg)
    {
        var phase = 2 * Math.PI * (day - NorthColdestDay) / 365.25;
        return new(PlainMeanC - ((latitudeDeg < 0 ? -1 : 1) * PlainSwingC * Math.Cos(phase)), PlainSdC, PlainRangeC, PlainRainMm, PlainWetShare);
    }

    private static UsualDay Around(Sums[] sums, int day, UsualDay plain)
    {
        var all = new Sums();
        for (var k = -Window; k <= Window; k++) all.Add(sums[((day + k + Year - 1) % Year) + 1]);
        double Lean(double sum, double n, double byDefault) => (sum + (PlainWeight * byDefault)) / (n + PlainWeight);
        // Once the record itself says what is usual, the plain year's own level no longer counts.
        var mean = all.N >= 2 * Window ? all.Mean / all.N : Lean(all.Mean, all.N, plain.MeanC);
        var own = all.N > 1 ? Math.Max(0, (all.Square / all.N) - (all.Mean / all.N * (all.Mean / all.N))) : 0;
        return new(mean, Math.Sqrt(Lean(own * all.N, all.N, plain.SdC * plain.SdC)), Lean(all.Range, all.RangeN, plain.RangeC), Lean(all.Rain, all.RainN, plain.RainMm), Lean(all.Wet, all.RainN, plain.WetShare));
    }

    private struct Sums
    {
        public double N, Mean, Square, RangeN, Range, RainN, Rain, Wet;

        public void Add(in Sums s)
        {
            N += s.N;
            Mean += s.Mean;
            Square += s.Square;
            RangeN += s.RangeN;
            Range += s.Range;
            RainN += s.RainN;
            Rain += s.Rain;
            Wet += s.Wet;
        }
    }
}
