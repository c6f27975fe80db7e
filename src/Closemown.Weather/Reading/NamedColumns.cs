using System.Globalization;

namespace Closemown.Weather;

/// <summary>Any table with a column of days and columns by name: of a station of one's own, or a spreadsheet. Units are read from the header or told; never guessed.</summary>
internal static class NamedColumns
{
    private const int HeaderWithin = 20;
    private static readonly string[] DateNames = ["date", "day", "datum", "time", "datetime"];

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

    public static WeatherTable Read(TextReader text, WeatherFileOptions options)
    {
        var lines = new List<string>();
        while (lines.Count < HeaderWithin && text.ReadLine() is { } l) lines.Add(l);
        var delimiter = lines.Count == 0 ? ',' : new[] { ';', '\t', ',' }.MaxBy(d => lines.Max(l => l.Count(c => c == d)));
        var at = lines.FindIndex(l => l.Split(delimiter).Any(c => DateNames.Contains(Plain(Bare(c).Name))));
        if (at < 0) throw new WeatherException("No line names a column of days.", "Name that column \"date\" in the first line, or save the table with its headers.");
        var columns = Columns(lines[at].Split(delimiter), options);
        var table = new WeatherTable();
        using var rest = new StringReader(string.Join('\n', lines.Skip(at + 1)) + (lines.Count > at + 1 ? "\n" : ""));
        foreach (var (cells, line) in Rows.Of(rest, delimiter).Concat(Rows.Of(text, delimiter).Select(r => (r.Cells, r.Line + lines.Count - at - 1))))
        {
            if (cells.All(c => c.Length == 0)) continue;
            Take(table, cells, line + at + 1, columns, delimiter != ',', options.Dates);
        }
        if (columns.Fields.Exists(f => f.Field == WeatherField.WindMs) && !columns.Fields.Exists(f => f.Field == WeatherField.WindHeightM))
            table.Notes.Add("Wind is taken as read 2 m above the ground: a column of windHeightM tells another height.");
        if (table.Count == 0) throw new WeatherException("No row has a day and a value.", "Look whether days and numbers stand under the headers.");
        return table;
    }

    private static void Take(WeatherTable table, string[] cells, long line, (int Date, List<(int At, WeatherField Field, Func<double, double> Convert)> Fields) columns, bool comma, string? dates)
    {
        if (columns.Date >= cells.Length || Date(cells[columns.Date], dates) is not { } date)
        {
            table.Drop("no day", line);
            return;
        }
        foreach (var (i, field, convert) in columns.Fields)
        {
            if (i >= cells.Length || Rows.IsMissing(cells[i])) continue;
            if (Rows.Number(cells[i], comma) is { } value) table.Set(date, field, convert(value), line);
            else table.Drop("no number", line);
        }
    }

    private static (int Date, List<(int At, WeatherField Field, Func<double, double> Convert)> Fields) Columns(string[] header, WeatherFileOptions options)
    {
        var names = header.Select(h => Bare(h)).ToArray();
        var date = Array.FindIndex(names, n => DateNames.Contains(Plain(n.Name)));
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
            var name = Plain(names[i].Name);
            if (Array.FindIndex(Known, k => k.Names.Contains(name)) is not (>= 0 and var known) || fields.Exists(f => f.Item2 == Known[known].Field)) continue;
            var field = Known[known].Field;
            fields.Add((i, field, Unit(field, names[i].Unit, header[i].Trim())));
        }
        if (fields.Count == 0) throw new WeatherException($"No column is known to hold weather: {string.Join(", ", header.Select(h => h.Trim()))}.", "Say which is which, with its unit: --column tMinC=\"Min\":C --column rainMm=\"Rain\":mm");
        return (date, fields);
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

    private static DateOnly? Date(string cell, string? order)
    {
        var text = cell.Length > 10 && cell[10] is 'T' or ' ' ? cell[..10] : cell;
        string[] forms = order switch
        {
            "dmy" => ["d/M/yyyy", "d.M.yyyy", "d-M-yyyy"],
            "mdy" => ["M/d/yyyy", "M-d-yyyy"],
            _ => ["yyyy-M-d", "yyyyMMdd", "yyyy/M/d", "d.M.yyyy"],
        };
        if (DateOnly.TryParseExact(text, forms, CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) || DateOnly.TryParseExact(text, ["yyyy-M-d", "yyyyMMdd"], CultureInfo.InvariantCulture, DateTimeStyles.None, out date)) return date;
        if (order is null && text.Contains('/', StringComparison.Ordinal))
            throw new WeatherException($"\"{cell}\" may be day first or month first.", "Add --dates dmy (day first) or --dates mdy (month first).");
        return null;
    }
}
