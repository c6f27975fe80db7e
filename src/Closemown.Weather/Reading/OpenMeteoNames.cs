namespace Closemown.Weather;

/// <summary>Daily variables of the Open-Meteo interface, as its documentation names them.</summary>
internal static class OpenMeteoNames
{
    /// <summary>Wind is that of 10 m.</summary>
    public const double WindHeightM = 10;

    private static readonly Dictionary<string, WeatherField> Fields = new(StringComparer.Ordinal)
    {
        ["temperature_2m_max"] = WeatherField.TMaxC,
        ["temperature_2m_min"] = WeatherField.TMinC,
        ["temperature_2m_mean"] = WeatherField.TMeanC,
        ["relative_humidity_2m_mean"] = WeatherField.RhPct,
        ["relative_humidity_2m_max"] = WeatherField.RhMaxPct,
        ["relative_humidity_2m_min"] = WeatherField.RhMinPct,
        ["dew_point_2m_mean"] = WeatherField.DewC,
        ["precipitation_sum"] = WeatherField.RainMm,
        ["wind_speed_10m_mean"] = WeatherField.WindMs,
        ["shortwave_radiation_sum"] = WeatherField.RadMjM2,
        ["sunshine_duration"] = WeatherField.SunH,
    };

    /// <summary>All that are asked for.</summary>
    public static IEnumerable<string> All => Fields.Keys;

    public static WeatherField? Of(string name) => Fields.TryGetValue(name, out var f) ? f : null;

    /// <summary>Whether only days have it: sunshine is told of hours under the same name.</summary>
    public static bool OnlyDaily(string name) => Of(name) is not (null or WeatherField.SunH);

    /// <summary>Why nothing was read.</summary>
    /// <param name="hours">Whether hours were there.</param>
    public static WeatherException NoDays(bool hours) => new(
        hours ? "The values are hourly, and no daily ones are with them." : "There are no daily values in it.",
        "Ask for daily values: daily=temperature_2m_min,temperature_2m_max,precipitation_sum");

    /// <summary>Puts a value into a table, in the entry's unit.</summary>
    public static void Set(WeatherTable table, DateOnly date, string name, string unit, double value, long line)
    {
        if (Of(name) is not { } field) return;
        var convert = WeatherUnits.To(WeatherFields.Of(field), unit) ?? throw new WeatherException($"{name} comes in \"{unit}\", which is not known for it.", $"It may come in {WeatherUnits.Of(WeatherFields.Of(field))}: ask for one of these.");
        table.Set(date, field, convert(value), line);
        if (field == WeatherField.WindMs) table.Set(date, WeatherField.WindHeightM, WindHeightM, line);
    }
}
