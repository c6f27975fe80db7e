using System.Globalization;

namespace Closemown.Weather;

/// <summary>Open-Meteo's CSV: blocks parted by an empty line, units in brackets after the names. Data licence CC BY 4.0.</summary>
internal static class OpenMeteoCsv
{
    public static WeatherTable Read(TextReader text)
    {
        var table = new WeatherTable();
        (string Name, string Unit)[]? columns = null;
        string? place = null;
        var daily = false;
        foreach (var (cells, line) in Rows.Of(text, ','))
        {
            if (cells.Length == 0 || (cells.Length == 1 && cells[0].Length == 0))
            {
                (columns, daily) = (null, false);
                continue;
            }
            if (columns is null)
            {
                columns = [.. cells.Select(Parts)];
                daily = columns.Any(c => OpenMeteoNames.Of(c.Name) is not null);
                continue;
            }
            var time = Array.FindIndex(columns, c => c.Name == "time");
            if (!daily || time < 0 || time >= cells.Length) continue;
            if (Array.FindIndex(columns, c => c.Name == "location_id") is var where and >= 0)
            {
                place ??= cells[where];
                if (cells[where] != place)
                {
                    table.Drop("of another place than the first", line);
                    continue;
                }
            }
            if (!DateOnly.TryParseExact(cells[time], "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date))
            {
                table.Drop("no day", line);
                continue;
            }
            for (var i = 0; i < Math.Min(cells.Length, columns.Length); i++)
            {
                if (OpenMeteoNames.Of(columns[i].Name) is null || Rows.IsMissing(cells[i])) continue;
                if (Rows.Number(cells[i], comma: false) is { } value) OpenMeteoNames.Set(table, date, columns[i].Name, columns[i].Unit, value, line);
                else table.Drop("no number", line);
            }
        }
        if (table.Count == 0) throw new WeatherException("The file has no daily values.", "Export daily values: days, not hours.");
        return table;
    }

    private static (string Name, string Unit) Parts(string header)
    {
        var open = header.IndexOf('(', StringComparison.Ordinal);
        return open < 0 ? (header.Trim(), "") : (header[..open].Trim(), header[(open + 1)..].TrimEnd(')', ' '));
    }
}
