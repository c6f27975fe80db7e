using Closemown.Estimation;

namespace Closemown.Turf;

/// <summary>One way the weather may go from a day on: near the forecast where there is one, then as the place's own years, else as usual.</summary>
/// <remarks>A forecast's error grows with its lead and carries over from day to day; days without one keep a share of the warmth of the day before. Numbers are assumptions.</remarks>
internal sealed class WeatherTrace
{
    private const double CarryOver = 0.7, ForecastSdC = 0.8, LeadSdC = 0.28, ForecastRainKept = 0.75, YearsNeeded = 3;
    private readonly TurfDays days;
    private readonly SeededNormal noise;
    private readonly DateOnly first;
    private readonly int yearBack;
    private double error;

    /// <summary>Starts a trace.</summary>
    /// <param name="days">The area's days: its record and what is usual.</param>
    /// <param name="first">The last day that is as it is.</param>
    /// <param name="trace">Its number: the seed.</param>
    public WeatherTrace(TurfDays days, DateOnly first, int trace)
    {
        (this.days, this.first) = (days, first);
        noise = new((ulong)trace + 1009);
        var years = (int)Math.Floor(days.Usual.Years);
        if (years >= YearsNeeded) yearBack = 1 + (trace % years);
    }

    /// <summary>The weather of a day after the first, in turn.</summary>
    public FilledDay On(DateOnly date)
    {
        var (read, usual) = (days.Record.On(date), days.Usual.On(date));
        double shock = noise.Next(), wet = noise.Next(), amount = noise.Next();
        var lead = date.DayNumber - first.DayNumber;
        if (read?.MeanC is not null)
        {
            if (!read.Forecast) return FilledDay.Of(read, usual);
            var sd = Math.Min(usual.SdC, ForecastSdC + (LeadSdC * lead));
            error = (CarryOver * error) + (sd * Math.Sqrt(1 - (CarryOver * CarryOver)) * shock);
            var day = FilledDay.Of(read, usual);
            // Rain forecast mostly comes, in another amount; a dry forecast mostly stays dry.
            var rain = read.RainMm is not { } mm ? Rain(usual, wet, amount)
                : mm > 0.2 ? NormalMath.Phi(wet) < ForecastRainKept ? mm * Math.Exp(0.5 * amount) : 0
                : NormalMath.Phi(wet) < 0.05 + (0.01 * lead) ? Rain(usual, -9, amount) : 0;
            return Moved(day, error, rain);
        }
        if (yearBack > 0 && Past(date) is { } past) return FilledDay.Of(past, usual) with { Known = true };
        error = (CarryOver * error) + (usual.SdC * Math.Sqrt(1 - (CarryOver * CarryOver)) * shock);
        return Moved(FilledDay.Of(null, usual), error, Rain(usual, wet, amount));
    }

    private DayWeather? Past(DateOnly date)
    {
        var last = days.Record.LastRecorded ?? date;
        var back = yearBack + Math.Max(0, date.Year - last.Year - 1);
        return days.Record.On(date.AddYears(-back)) is { Forecast: false, MeanC: not null, RainMm: not null } day ? day : null;
    }

    private static FilledDay Moved(FilledDay day, double byC, double rainMm) =>
        day with { MeanC = day.MeanC + byC, TMinC = day.TMinC + byC, TMaxC = day.TMaxC + byC, RainMm = rainMm, Known = true };

    private static double Rain(UsualDay usual, double wet, double amount)
    {
        if (usual.WetShare <= 0 || NormalMath.Phi(wet) > usual.WetShare) return 0;
        // Exponential amounts (common in weather generators, from memory): by its quantile.
        return -Math.Log(Math.Max(1e-9, 1 - NormalMath.Phi(amount))) * usual.RainMm / usual.WetShare;
    }
}
