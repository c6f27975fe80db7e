using System.Globalization;

namespace Closemown.Weather;

/// <summary>Daily temperature and rain of MIDAS Open, in BADC-CSV: lines about the file and its columns, "data", the table, "end data"; missing is NA. Open Government Licence.</summary>
/// <remarks>
/// Rows are told by the END of their period, mostly 09 UTC, and are not thrown back: a maximum and rain are of the day before, a minimum is of the day of reading. A day may come as 24 hours, as two of 12,
/// or both. Only version 1, the checked one, is taken. Sources: the comments in the files of version 201908 (temperature); CEDA, columns of the RD table, "ending on the stated day" (rain),
/// https://artefacts.ceda.ac.uk/badc_datadocs/ukmo-midas/RD_Table.html
/// </remarks>
internal static class MidasDaily
{
    private const int Checked = 1;

    public static bool Is(string first) => first.StartsWith("Conventions,G,BADC-CSV", StringComparison.Ordinal);

    public static WeatherTable Read(TextReader text)
    {
        var table = new WeatherTable();
        var warmth = new HalfDays();
        var units = new Dictionary<string, string>(StringComparer.Ordinal);
        string[]? header = null;
        string? station = null;
        var (data, others) = (false, false);
        foreach (var (cells, line) in Rows.Of(text, ','))
        {
            if (cells.Length == 0) continue;
            if (cells[0] == "end data") break;
            if (!data)
            {
                if (cells is ["long_name", _, _, _, ..]) units[cells[1]] = cells[3];
                data = cells[0] == "data";
                continue;
            }
            if (header is null)
            {
                header = cells;
                if (!cells.Contains("ob_end_time") && !cells.Contains("ob_date")) throw new WeatherException("The file holds neither daily temperature nor daily rain.", "Take uk-daily-temperature-obs or uk-daily-rain-obs.");
                continue;
            }
            string Cell(string name) => Array.IndexOf(header, name) is var i and >= 0 && i < cells.Length ? cells[i] : "";
            double? Value(string name, Measure measure, string usual)
            {
                if (Rows.IsMissing(Cell(name))) return null;
                var unit = units.GetValueOrDefault(name, usual);
                var convert = WeatherUnits.To(measure, unit) ?? throw new WeatherException($"{name} comes in \"{unit}\", which is not known for it.", $"It may come in {WeatherUnits.Of(measure)}.");
                if (Rows.Number(Cell(name), comma: false) is { } x) return convert(x);
                table.Drop("no number", line);
                return null;
            }
            if (Whole(Cell("version_num")) is { } version && version != Checked)
            {
                others = true;
                table.Drop("a version that is not the checked one", line);
                continue;
            }
            if (DayStamp.Of(Cell(header.Contains("ob_date") ? "ob_date" : "ob_end_time"), "ymd") is not { } stamp)
            {
                table.Drop("no day", line);
                continue;
            }
            HeaderRow.OneStation(ref station, Cell("src_id"), line);
            if (header.Contains("ob_date"))
            {
                if (Whole(Cell("ob_day_cnt")) is not (null or 1)) table.Drop("rain summed over several days", line);
                else if (Value("prcp_amt", Measure.Depth, "mm") is { } rain) table.Set(stamp.Date.AddDays(-1), WeatherField.RainMm, rain, line);
                continue;
            }
            var hours = Whole(Cell("ob_hour_count")) ?? 24;
            if (hours < 12) throw new WeatherException($"The rows are hourly, not daily: line {line.ToString(CultureInfo.InvariantCulture)} spans {hours.ToString(CultureInfo.InvariantCulture)} h.", "Take uk-daily-temperature-obs or uk-daily-rain-obs: daily values.");
            if (!warmth.Add(stamp.Date, stamp.Time ?? new(9, 0), hours, Value("min_air_temp", Measure.Temperature, "degC"), Value("max_air_temp", Measure.Temperature, "degC"), line)) table.Drop("of neither a day nor half a day", line);
        }
        warmth.Close(table);
        if (table.Count == 0) throw new WeatherException(others ? "The file has no row of version 1, the checked one." : "No row has a day and a value.", "Take the files of qc-version-1 with daily temperature or rain.");
        return table;
    }

    private static int? Whole(string cell) => int.TryParse(cell, NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : null;
}
