using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>An entry of the kind <c>weather</c>: one day's weather.</summary>
public static class WeatherEntry
{
    public const string Name = "weather";

    /// <summary>The day.</summary>
    public static Field<string> Date { get; } = Date("date", "the day").Must();

    /// <summary>Least temperature, °C.</summary>
    public static Field<double> TMinC { get; } = Number("tMinC", -90, 60, "least temperature, °C");

    /// <summary>Greatest temperature, °C.</summary>
    public static Field<double> TMaxC { get; } = Number("tMaxC", -90, 60, "greatest temperature, °C");

    /// <summary>Mean temperature, °C.</summary>
    public static Field<double> TMeanC { get; } = Number("tMeanC", -90, 60, "mean temperature, °C");

    /// <summary>Mean humidity, %.</summary>
    public static Field<double> RhPct { get; } = Number("rhPct", 0, 100, "mean humidity, %");

    /// <summary>Least humidity, %.</summary>
    public static Field<double> RhMinPct { get; } = Number("rhMinPct", 0, 100, "least humidity, %");

    /// <summary>Greatest humidity, %.</summary>
    public static Field<double> RhMaxPct { get; } = Number("rhMaxPct", 0, 100, "greatest humidity, %");

    /// <summary>Dew point, °C.</summary>
    public static Field<double> DewC { get; } = Number("dewC", -90, 60, "dew point, °C");

    /// <summary>Rain, mm.</summary>
    public static Field<double> RainMm { get; } = Number("rainMm", 0, 2000, "rain, mm");

    /// <summary>Mean wind, m/s.</summary>
    public static Field<double> WindMs { get; } = Number("windMs", 0, 120, "mean wind, m/s");

    /// <summary>Height of that reading, m (2).</summary>
    public static Field<double> WindHeightM { get; } = Number("windHeightM", 0.1, 200, "height of that reading, m (2)");

    /// <summary>Bright sunshine, h.</summary>
    public static Field<double> SunH { get; } = Number("sunH", 0, 24, "bright sunshine, h");

    /// <summary>Radiation, MJ/m².</summary>
    public static Field<double> RadMjM2 { get; } = Number("radMjM2", 0, 60, "radiation, MJ/m²");

    /// <summary>Where from.</summary>
    public static Field<string> Source { get; } = Text("source", "where from");

    /// <summary>A forecast, not a record.</summary>
    public static Field<bool> Forecast { get; } = Flag("forecast", "a forecast, not a record");

    public static KindSpec Kind { get; } = new(Name, Belongs.Area, Nature.Description, "one day's weather",
        Date, TMinC, TMaxC, TMeanC, RhPct, RhMinPct, RhMaxPct, DewC, RainMm, WindMs, WindHeightM, SunH, RadMjM2, Source,
        Forecast)
    {
        Example = """{"kind":"weather","area":"green","date":"2026-05-01","tMinC":4,"tMaxC":15}""",
    };
}
