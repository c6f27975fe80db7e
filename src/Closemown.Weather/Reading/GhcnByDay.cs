namespace Closemown.Weather;

/// <summary>GHCN-Daily with one day a row (the "daily summaries" export). NOAA, public domain.</summary>
/// <remarks>The file does not say its units: the order form gives metric or standard, the bulk files tenths. So they must be told, unless a number can only be tenths.</remarks>
internal static class GhcnByDay
{
    private const double HottestC = 60, InchMm = 25.4;

    public static bool Is(string header) =>
        HeaderRow.Has(header, ',', "STATION", "DATE") && !HeaderRow.Has(header, ',', "FRSHTT") && (HeaderRow.Has(header, ',', "TMAX") || HeaderRow.Has(header, ',', "TMIN") || HeaderRow.Has(header, ',', "PRCP"));

    public static WeatherTable Read(TextReader text, string? units)
    {
        var table = new WeatherTable();
        var daily = new DailyOnly();
        var held = new List<(DateOnly Date, WeatherField Field, double Value, long Line)>();
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
            foreach (var (name, field) in (ReadOnlySpan<(string, WeatherField)>)[("TMAX", WeatherField.TMaxC), ("TMIN", WeatherField.TMinC), ("TAVG", WeatherField.TMeanC), ("PRCP", WeatherField.RainMm), ("AWND", WeatherField.WindMs)])
            {
                if (row[name] is not { Length: > 0 } cell || Rows.IsMissing(cell)) continue;
                // Measurement, quality, source, time.
                var flags = row[name + "_ATTRIBUTES"].Split(',');
                if (flags.Length > 1 && flags[1].Trim().Length > 0) table.Drop("failed the station network's check", line);
                else if (Rows.Number(cell, comma: false) is { } value)
                {
                    var trace = flags[0].Trim() == "T" && field == WeatherField.RainMm;
                    if (trace) table.Traces++;
                    held.Add((stamp.Date, field, trace ? 0 : value, line));
                }
                else table.Drop("no number", line);
            }
        }
        var told = units ?? (held.Any(h => h.Field is WeatherField.TMaxC && h.Value > 130) ? "tenths" : null)
            ?? throw new WeatherException("The file does not say its units: such exports come in metric, in standard (inch, °F) or in tenths.", "Look at a summer's highest temperature (TMAX): 25 is metric, 77 standard, 250 tenths; then add --units metric, standard or tenths.");
        foreach (var (date, field, value, line) in held)
        {
            table.Set(date, field, Converted(field, value, told), line);
            if (field == WeatherField.WindMs) table.Set(date, WeatherField.WindHeightM, 10, line);
        }
        daily.Close(table);
        if (told == "metric" && held.Exists(h => h.Field == WeatherField.TMaxC && h.Value > HottestC)) throw new WeatherException("A highest temperature over 60 is no metric one.", "Add --units standard (°F) or --units tenths.");
        return table;
    }

    private static double Converted(WeatherField field, double x, string units) => (units, WeatherFields.Of(field)) switch
    {
        ("metric", _) => x,
        ("tenths", _) => x / 10,
        ("standard", Measure.Temperature) => (x - 32) * 5 / 9,
        ("standard", Measure.Depth) => x * InchMm,
        ("standard", Measure.Speed) => x * 0.44704,
        _ => throw new WeatherException($"\"{units}\" are no units of such a file.", "Write --units metric, standard or tenths."),
    };
}
