namespace Closemown.Weather;

/// <summary>Any table with a column of days and columns by name: of a station of one's own, or a spreadsheet. Units are read from the header or told; never guessed.</summary>
internal static class NamedColumns
{
    private const int HeaderWithin = 20;
    private static readonly string[] DateNames = ["date", "day", "datum", "datetime", "timestamp", "time"];
    private static readonly string[] ClockNames = ["time", "hour", "timeofday", "localtime", "obstime", "uhrzeit", "zeit", "stunde"];

    private static readonly (WeatherField Field, string[] Names)[] Known =
    [
        (WeatherField.TMinC, ["tmin", "tempmin", "mintemp", "lowtemp", "low", "minimumtemperature", "temperaturemin"]),
        (WeatherField.TMaxC, ["tmax", "tempmax", "maxtemp", "hightemp", "high", "maximumtemperature", "temperaturemax"]),
        (WeatherField.TMeanC, ["tmean", "tavg", "meantemp", "avgtemp", "temperature", "temp"]),
        (WeatherField.RainMm, ["rain", "rainfall", "precipitation", "precip"]),
        (WeatherField.WindMs, ["wind", "windspeed", "avgwind", "meanwind"]),
        (WeatherField.RhPct, ["rh", "humidity", "rhmean", "avghumidity"]),
        (WeatherField.RhMinPct, ["rhmin", "minhumidity"]),
        (WeatherField.RhMaxPct, ["rhmax", "maxhumidity"]),
        (WeatherField.DewC, ["dew", "dewpoint"]),
        (WeatherField.SunH, ["sun", "sunshine"]),
        (WeatherField.RadMjM2, ["radiation", "solar", "solarradiation"]),
    ];

    /// <summary>Reads the table.</summary>
    /// <param name="head">Its beginning, to find the header and what parts the cells.</param>
    /// <param name="text">All of it.</param>
    /// <param name="options">What the person says about it.</param>
    public static WeatherTable Read(string head, TextReader text, WeatherFileOptions options)
    {
        var (delimiter, at, header) = Header(head) ?? throw new WeatherException("No line names a column of days.", "Name that column \"date\" in the first line, or save the table with its headers.");
        var columns = Columns(header, options);
        var table = new WeatherTable();
        var daily = new DailyOnly();
        foreach (var (cells, line) in Rows.Of(text, delimiter).Skip(at + 1))
        {
            if (cells.All(c => c.Length == 0)) continue;
            Take(table, daily, cells, line, columns, delimiter != ',', options.Dates);
        }
        daily.Close(table);
        if (columns.Fields.Exists(f => f.Field == WeatherField.WindMs) && !columns.Fields.Exists(f => f.Field == WeatherField.WindHeightM))
            table.Notes.Add("Wind is taken as read 2 m above the ground: a column of windHeightM tells another height.");
        if (table.Count == 0) throw new WeatherException("No row has a day and a value.", "Look whether days and numbers stand under the headers.");
        return table;
    }

    /// <summary>What parts the cells, and the row that names a column of days: with the delimiter that makes most cells of it.</summary>
    private static (char Delimiter, int At, string[] Cells)? Header(string head)
    {
        (char Delimiter, int At, string[] Cells)? best = null;
        foreach (var delimiter in (ReadOnlySpan<char>)[';', '\t', ','])
        {
            using var text = new StringReader(head);
            var found = Rows.Of(text, delimiter).Take(HeaderWithin).Select((row, i) => (row.Cells, At: i)).FirstOrDefault(r => r.Cells.Any(c => DateNames.Contains(Plain(Bare(c).Name))));
            if (found.Cells is { } cells && cells.Length > (best?.Cells.Length ?? 0)) best = (delimiter, found.At, cells);
        }
        return best;
    }

    private static void Take(WeatherTable table, DailyOnly daily, string[] cells, long line, (int Date, int Clock, List<(int At, WeatherField Field, Func<double, double> Convert)> Fields) columns, bool comma, string? dates)
    {
        if (columns.Date >= cells.Length || DayStamp.Of(cells[columns.Date], dates) is not { } stamp)
        {
            table.Drop("no day", line);
            return;
        }
        daily.See(stamp, line, columns.Clock >= 0 && columns.Clock < cells.Length ? DayStamp.Clock(cells[columns.Clock]) : null);
        foreach (var (i, field, convert) in columns.Fields)
        {
            if (i >= cells.Length || Rows.IsMissing(cells[i])) continue;
            if (Rows.Number(cells[i], comma) is { } value) table.Set(stamp.Date, field, convert(value), line);
            else table.Drop("no number", line);
        }
    }

    private static (int Date, int Clock, List<(int At, WeatherField Field, Func<double, double> Convert)> Fields) Columns(string[] header, WeatherFileOptions options)
    {
        var names = header.Select(h => Bare(h)).ToArray();
        var plain = Array.ConvertAll(names, n => Plain(n.Name));
        // A day beside a time: the day counts, whichever comes first.
        var date = DateNames.Select(n => Array.IndexOf(plain, n)).First(i => i >= 0);
        var clock = Array.FindIndex(plain, n => ClockNames.Contains(n));
        if (clock == date) clock = -1;
        var fields = new List<(int, WeatherField, Func<double, double>)>();
        foreach (var (name, told) in options.Columns)
        {
            var field = WeatherFields.Find(name) ?? throw new WeatherException($"\"{name}\" is no field of weather.", $"Write one of {string.Join(", ", WeatherFields.All)}.");
            var colon = told.LastIndexOf(':');
            var (column, unit) = colon > 0 ? (told[..colon], told[(colon + 1)..]) : (told, null);
            var at = Array.FindIndex(header, h => h.Trim().Trim('"', '\uFEFF') == column.Trim());
            if (at < 0) at = Array.FindIndex(names, n => n.Name.Equals(column.Trim(), StringComparison.OrdinalIgnoreCase));
            if (at < 0) throw new WeatherException($"The file has no column \"{column}\".", $"It has {string.Join(", ", header.Select(h => h.Trim()))}.");
            fields.Add((at, field, Unit(field, unit ?? names[at].Unit, header[at].Trim())));
        }
        for (var i = 0; i < names.Length; i++)
        {
            if (i == date || fields.Exists(f => f.Item1 == i)) continue;
            var name = plain[i];
            if (Array.FindIndex(Known, k => k.Names.Contains(name)) is not (>= 0 and var known) || fields.Exists(f => f.Item2 == Known[known].Field)) continue;
            var field = Known[known].Field;
            fields.Add((i, field, Unit(field, names[i].Unit, header[i].Trim())));
        }
        if (fields.Count == 0) throw new WeatherException($"No column is known to hold weather: {string.Join(", ", header.Select(h => h.Trim()))}.", "Say which is which, with its unit: --column tMinC=\"Min\":C --column rainMm=\"Rain\":mm");
        return (date, clock, fields);
    }

    private static Func<double, double> Unit(WeatherField field, string unit, string header)
    {
        var measure = WeatherFields.Of(field);
        if (unit.Length == 0 && measure == Measure.Share) unit = "%";
        if (unit.Length == 0)
            throw new WeatherException($"The column \"{header}\" does not say its unit.", $"Say it: --column {WeatherFields.Name(field)}=\"{header}\":UNIT, with {WeatherUnits.Of(measure)}.");
        return WeatherUnits.To(measure, unit) ?? throw new WeatherException($"The column \"{header}\" has \"{unit}\", which is no unit known for it.", $"Say it: --column {WeatherFields.Name(field)}=\"{header}\":UNIT, with {WeatherUnits.Of(measure)}.");
    }

    /// <summary>A header's name and the unit in brackets after it.</summary>
    private static (string Name, string Unit) Bare(string header)
    {
        var text = header.Trim().Trim('"', '\uFEFF').Trim();
        var open = text.IndexOfAny(['(', '[']);
        return open <= 0 ? (text, "") : (text[..open].Trim(), text[(open + 1)..].TrimEnd(')', ']', ' '));
    }

    private static string Plain(string name) => new([.. name.ToLowerInvariant().Where(char.IsLetter)]);
}
