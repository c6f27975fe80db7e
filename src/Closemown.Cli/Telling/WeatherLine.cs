using System.Globalization;
using Closemown.Advice;
using Closemown.Entries;
using Closemown.Quantities;
using Closemown.Turf;

namespace Closemown.Cli;

/// <summary>A day's weather on one line.</summary>
internal static class WeatherLine
{
    /// <summary>An entry's.</summary>
    public static string Of(Entry e, WritingStyle style) =>
        Line(e[WeatherEntry.Date] ?? "", e[WeatherEntry.TMinC], e[WeatherEntry.TMaxC], e[WeatherEntry.RainMm], e[WeatherEntry.WindMs], e[WeatherEntry.RhPct], e[WeatherEntry.Forecast] == true ? "forecast" : e[WeatherEntry.Source] ?? "", style);

    /// <summary>A merged day's.</summary>
    public static string Of(DayWeather d, WritingStyle style) => Line(TurfAnswer.Date(d.Date), d.TMinC, d.TMaxC, d.RainMm, d.WindMs, d.RhPct, d.Forecast ? "forecast" : "recorded", style);

    public static string Header(WritingStyle style) => style.Turf == TurfUnits.American
        ? $"{"day",-10}{"least °F",10}{"most °F",9}{"rain in",9}{"wind mph",10}{"humidity %",12}"
        : $"{"day",-10}{"least °C",10}{"most °C",9}{"rain mm",9}{"wind m/s",10}{"humidity %",12}";

    private static string Line(string date, double? low, double? high, double? rain, double? wind, double? rh, string source, WritingStyle style)
    {
        string N(double? x) => x is { } v ? v.ToString("0.0", CultureInfo.InvariantCulture).Replace('.', style.DecimalSign) : "·";
        string In(double? x, Func<double, WritingStyle, string> print) => style.Turf != TurfUnits.American ? N(x) : x is { } v ? print(v, style).Split(' ')[0] : "·";
        return $"{date,-10}{In(low, TurfPrinting.Warmth),10}{In(high, TurfPrinting.Warmth),9}{In(rain, TurfPrinting.Water),9}{In(wind, TurfPrinting.Wind),10}{N(rh),12}  {source}";
    }
}
