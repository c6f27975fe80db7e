using System.Globalization;
using System.Text.RegularExpressions;

namespace Closemown.Weather;

/// <summary>GHCN-Daily with one element a row: station, date, element, value, flags. NOAA, public domain.</summary>
/// <remarks>
/// Rain and temperatures come in tenths. A value with a quality flag failed a check and is dropped; a trace of rain (measurement flag T) is none; a sum over several days
/// (MDPR) is put on no day. Readers of the US volunteer network read at 7 in the morning: their day is said in a note. Source: NOAA, readme of GHCN-Daily.
/// </remarks>
internal static partial class GhcnByElement
{
    private static readonly Dictionary<string, (WeatherField Field, double Factor)> Elements = new(StringComparer.Ordinal)
    {
        ["TMAX"] = (WeatherField.TMaxC, 0.1),
        ["TMIN"] = (WeatherField.TMinC, 0.1),
        ["TAVG"] = (WeatherField.TMeanC, 0.1),
        ["PRCP"] = (WeatherField.RainMm, 0.1),
        ["AWND"] = (WeatherField.WindMs, 0.1),
        ["TSUN"] = (WeatherField.SunH, 1 / 60.0),
        ["RHAV"] = (WeatherField.RhPct, 1),
        ["RHMN"] = (WeatherField.RhMinPct, 1),
        ["RHMX"] = (WeatherField.RhMaxPct, 1),
        ["ADPT"] = (WeatherField.DewC, 0.1),
    };

    public static bool Is(string line) => Row().IsMatch(line);

    public static WeatherTable Read(TextReader text)
    {
        var table = new WeatherTable();
        var morning = 0;
        string? station = null;
        foreach (var (cells, line) in Rows.Of(text, ','))
        {
            if (cells.Length < 4 || cells[1].Equals("DATE", StringComparison.OrdinalIgnoreCase)) continue;
            HeaderRow.OneStation(ref station, cells[0], line);
            if (cells[2] == "MDPR") table.Drop("rain summed over several days", line);
            if (!Elements.TryGetValue(cells[2], out var element)) continue;
            string Flag(int i) => i < cells.Length ? cells[i] : "";
            if (!DateOnly.TryParseExact(cells[1], "yyyyMMdd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) || !DayStamp.Sensible(date) || Rows.Number(cells[3], comma: false) is not { } value)
            {
                table.Drop("no day or no number", line);
                continue;
            }
            if (value is -9999)
            {
                table.Drop("missing", line);
                continue;
            }
            if (Flag(5).Length > 0)
            {
                table.Drop("failed the station network's check", line);
                continue;
            }
            if (Flag(4) == "T" && element.Field == WeatherField.RainMm)
            {
                table.Traces++;
                value = 0;
            }
            if (Flag(7).StartsWith("07", StringComparison.Ordinal) || Flag(7).StartsWith("08", StringComparison.Ordinal)) morning++;
            table.Set(date, element.Field, value * element.Factor, line);
            if (element.Field == WeatherField.WindMs) table.Set(date, WeatherField.WindHeightM, 10, line);
        }
        if (morning > table.Count / 2) table.Notes.Add(WeatherTable.MorningNote);
        return table;
    }

    [GeneratedRegex("^[A-Z]{2}[A-Z0-9_-]{9},[0-9]{8},[A-Z0-9]{4},")]
    private static partial Regex Row();
}
