namespace Closemown.Weather;

/// <summary>The German weather service's daily values of a station: semicolons, padded fields, missing is -999. Licence CC BY 4.0 (from memory).</summary>
/// <remarks>Names and units: description of the data set "KL", daily; those of warmth and humidity from memory. The height of the wind, 10 m: common practice, no source.</remarks>
internal static class DwdDaily
{
    private static readonly (string Name, WeatherField Field)[] Columns =
    [
        ("TNK", WeatherField.TMinC), ("TXK", WeatherField.TMaxC), ("TMK", WeatherField.TMeanC), ("UPM", WeatherField.RhPct),
        ("RSK", WeatherField.RainMm), ("SDK", WeatherField.SunH), ("FM", WeatherField.WindMs),
    ];

    public static bool Is(string header) => HeaderRow.Has(header, ';', "STATIONS_ID", "MESS_DATUM");

    public static WeatherTable Read(TextReader text)
    {
        var table = new WeatherTable();
        var daily = new DailyOnly();
        string? station = null;
        foreach (var row in NamedRow.Of(text, ';'))
        {
            var line = row.Line;
            if (row.Cells.All(c => c.Length == 0)) continue;
            if (DayStamp.Of(row["MESS_DATUM"], "ymd") is not { } stamp)
            {
                table.Drop("no day", line);
                continue;
            }
            // Its hourly files name their rows in the same column.
            if (stamp.Time is not null) throw new WeatherException($"The rows are hourly, not daily: line {line.ToString(System.Globalization.CultureInfo.InvariantCulture)} is of {row["MESS_DATUM"]}.", DailyOnly.AskForDays);
            HeaderRow.OneStation(ref station, row["STATIONS_ID"], line);
            daily.See(stamp, line);
            foreach (var (name, field) in Columns)
            {
                if (Rows.IsMissing(row[name])) continue;
                if (Rows.Number(row[name], comma: false) is not { } value)
                {
                    table.Drop("no number", line);
                    continue;
                }
                table.Set(stamp.Date, field, value, line);
                if (field == WeatherField.WindMs) table.Set(stamp.Date, WeatherField.WindHeightM, 10, line);
            }
        }
        daily.Close(table);
        if (table.Count == 0) throw new WeatherException("No row has a day and a value that is known.", "Take the daily values named KL: the file produkt_klima_tag_….txt of the archive.");
        if (table.Fields.Contains(WeatherFields.Name(WeatherField.RainMm))) table.Notes.Add("Rain of a day runs on to 06 UTC of the next morning.");
        return table;
    }
}
