namespace Closemown.Weather;

/// <summary>Global summary of the day (NOAA): one station, one day a row, in °F, knots and inches. US stations public domain; others may not be passed on for commerce (WMO resolution 40).</summary>
/// <remarks>
/// Missing is 9999.9, 999.9 or 99.99, by column. Rain flagged H (none measured, but seen) or I (nothing reported) is not known, which is not none. The day is one of UTC.
/// Source: NCEI, readme of the global summary of the day, as quoted by public loaders. The height of the wind, 10 m: common practice, no source.
/// </remarks>
internal static class Gsod
{
    private const double MissingWarmth = 9999.9, MissingWind = 999.9, MissingRain = 99.99;

    private static readonly (string Name, WeatherField Field, string Unit, double Missing)[] Columns =
    [
        ("MIN", WeatherField.TMinC, "F", MissingWarmth),
        ("MAX", WeatherField.TMaxC, "F", MissingWarmth),
        ("TEMP", WeatherField.TMeanC, "F", MissingWarmth),
        ("DEWP", WeatherField.DewC, "F", MissingWarmth),
        ("PRCP", WeatherField.RainMm, "in", MissingRain),
        ("WDSP", WeatherField.WindMs, "kn", MissingWind),
    ];

    public static bool Is(string header) => HeaderRow.Has(header, ',', "STATION", "DATE", "FRSHTT");

    public static WeatherTable Read(TextReader text)
    {
        var table = new WeatherTable();
        var daily = new DailyOnly();
        string? station = null;
        foreach (var row in NamedRow.Of(text, ','))
        {
            var line = row.Line;
            if (DayStamp.Of(row["DATE"], "ymd") is not { } stamp)
            {
                table.Drop("no day", line);
                continue;
            }
            HeaderRow.OneStation(ref station, row["STATION"], line);
            daily.See(stamp, line);
            foreach (var (name, field, unit, missing) in Columns)
            {
                if (row[name].Length == 0) continue;
                if (Rows.Number(row[name], comma: false) is not { } value) table.Drop("no number", line);
                else if (field == WeatherField.RainMm && row["PRCP_ATTRIBUTES"] is "H" or "I") table.Drop("rain not reported, or seen and not measured", line);
                else if (value != missing)
                {
                    table.Set(stamp.Date, field, WeatherUnits.To(WeatherFields.Of(field), unit)!(value), line);
                    if (field == WeatherField.WindMs) table.Set(stamp.Date, WeatherField.WindHeightM, 10, line);
                }
            }
        }
        daily.Close(table);
        if (table.Count == 0) throw new WeatherException("No row has a day and a value.", "Export it again.");
        table.Notes.Add("The days are those of UTC: far from Greenwich they are not the local ones.");
        return table;
    }
}
