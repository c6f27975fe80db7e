namespace Closemown.Weather;

/// <summary>What a day's weather may hold, in the fields and units of a <c>weather</c> entry.</summary>
public enum WeatherField
{
    TMinC,
    TMaxC,
    TMeanC,
    RhPct,
    RhMinPct,
    RhMaxPct,
    DewC,
    RainMm,
    WindMs,
    WindHeightM,
    SunH,
    RadMjM2,
}

/// <summary>Names and kinds of the fields.</summary>
internal static class WeatherFields
{
    private static readonly string[] Names = ["tMinC", "tMaxC", "tMeanC", "rhPct", "rhMinPct", "rhMaxPct", "dewC", "rainMm", "windMs", "windHeightM", "sunH", "radMjM2"];

    public const int Count = 12;

    /// <summary>The field's name in an entry.</summary>
    public static string Name(WeatherField field) => Names[(int)field];

    public static IReadOnlyList<string> All => Names;

    public static WeatherField? Find(string name)
    {
        var i = Array.FindIndex(Names, n => n.Equals(name, StringComparison.OrdinalIgnoreCase));
        return i < 0 ? null : (WeatherField)i;
    }

    /// <summary>The unit of the field in an entry.</summary>
    public static string Unit(WeatherField field) => Of(field) switch
    {
        Measure.Temperature => "°C",
        Measure.Share => "%",
        Measure.Depth => "mm",
        Measure.Speed => "m/s",
        Measure.Height => "m",
        Measure.Duration => "h",
        _ => "MJ/m²",
    };

    /// <summary>What the field measures.</summary>
    public static Measure Of(WeatherField field) => field switch
    {
        WeatherField.TMinC or WeatherField.TMaxC or WeatherField.TMeanC or WeatherField.DewC => Measure.Temperature,
        WeatherField.RhPct or WeatherField.RhMinPct or WeatherField.RhMaxPct => Measure.Share,
        WeatherField.RainMm => Measure.Depth,
        WeatherField.WindMs => Measure.Speed,
        WeatherField.WindHeightM => Measure.Height,
        WeatherField.SunH => Measure.Duration,
        _ => Measure.Energy,
    };
}

/// <summary>Kinds of quantity, each with its units.</summary>
internal enum Measure
{
    Temperature,
    Share,
    Depth,
    Speed,
    Height,
    Duration,
    Energy,
}
