namespace Closemown.Weather;

/// <summary>Open-Meteo's CSV: blocks parted by an empty line, units in brackets after the names; several places carry a number in every block. Data licence CC BY 4.0.</summary>
internal static class OpenMeteoCsv
{
    private const string Number = "location_id";

    /// <param name="text">The file.</param>
    /// <param name="place">Which place of several, counted from 1; null for the only one.</param>
    /// <exception cref="WeatherException">It has no days, hours only, or several places of which none is named.</exception>
    public static WeatherTable Read(TextReader text, int? place)
    {
        var table = new WeatherTable();
        var daily = new DailyOnly();
        var places = new List<(string Id, string Latitude, string Longitude)>();
        (string Name, string Unit)[]? columns = null;
        string? id = null;
        var hours = false;
        foreach (var (cells, line) in Rows.Of(text, ','))
        {
            if (cells.All(c => c.Length == 0))
            {
                columns = null;
                continue;
            }
            if (columns is null)
            {
                columns = [.. cells.Select(Parts)];
                continue;
            }
            string Cell(string name) => Array.FindIndex(columns, c => c.Name == name) is var i and >= 0 && i < cells.Length ? cells[i] : "";
            if (Cell("time").Length == 0)
            {
                if (Cell("latitude").Length > 0) places.Add((Cell(Number), Cell("latitude"), Cell("longitude")));
                continue;
            }
            id ??= places.Count == 0 ? "" : places[PlaceOf.Index([.. places.Select(p => (p.Latitude, p.Longitude))], place)].Id;
            if (Cell(Number) != id) continue;
            if (DayStamp.Of(Cell("time"), "ymd") is not { } stamp)
            {
                table.Drop("no day", line);
                continue;
            }
            // Hours have variables of their own; only a block with those of days is read, and must be one of days.
            if (stamp.Time is not null && !columns.Any(c => OpenMeteoNames.OnlyDaily(c.Name)))
            {
                hours = true;
                continue;
            }
            daily.See(stamp, line);
            for (var i = 0; i < Math.Min(cells.Length, columns.Length); i++)
            {
                if (OpenMeteoNames.Of(columns[i].Name) is null || Rows.IsMissing(cells[i])) continue;
                if (Rows.Number(cells[i], comma: false) is { } value) OpenMeteoNames.Set(table, stamp.Date, columns[i].Name, columns[i].Unit, value, line);
                else table.Drop("no number", line);
            }
        }
        if (table.Count == 0) throw OpenMeteoNames.NoDays(hours);
        return table;
    }

    private static (string Name, string Unit) Parts(string header)
    {
        var open = header.IndexOf('(', StringComparison.Ordinal);
        return open < 0 ? (header.Trim(), "") : (header[..open].Trim(), header[(open + 1)..].TrimEnd(')', ' '));
    }
}
