using System.Globalization;
using System.Text.Json;

namespace Closemown.Weather;

/// <summary>Open-Meteo's JSON: parallel arrays under <c>daily</c>, units under <c>daily_units</c>. Data licence CC BY 4.0.</summary>
internal static class OpenMeteoJson
{
    /// <exception cref="WeatherException">It is cut off, has no days, or comes in a unit that is not known.</exception>
    public static WeatherTable Read(string json)
    {
        try
        {
            using var document = JsonDocument.Parse(json);
            return Read(document.RootElement);
        }
        catch (JsonException)
        {
            throw new WeatherException("The JSON is cut off or broken.", "Fetch it again.");
        }
    }

    private static WeatherTable Read(JsonElement root)
    {
        if (root.ValueKind == JsonValueKind.Object && root.TryGetProperty("error", out var error) && error.ValueKind == JsonValueKind.True)
            throw new WeatherException($"The service refused: {(root.TryGetProperty("reason", out var r) ? r.ToString() : "no reason given")}.", "Correct what it names.");
        if (root.ValueKind != JsonValueKind.Object || !root.TryGetProperty("daily", out var daily) || daily.ValueKind != JsonValueKind.Object || !daily.TryGetProperty("time", out var time) || time.ValueKind != JsonValueKind.Array)
            throw new WeatherException("The JSON has no daily values.", "Ask for daily values: days, not hours.");
        if (!root.TryGetProperty("daily_units", out var units) || units.ValueKind != JsonValueKind.Object) throw new WeatherException("The JSON does not say its units.", "Fetch it again with its daily_units.");
        var table = new WeatherTable();
        var dates = new List<DateOnly>();
        foreach (var t in time.EnumerateArray())
        {
            if (!DateOnly.TryParseExact(t.ToString(), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var d)) throw new WeatherException($"\"{t}\" is no day.", "Ask for dates in ISO 8601.");
            dates.Add(d);
        }
        foreach (var column in daily.EnumerateObject())
        {
            if (OpenMeteoNames.Of(column.Name) is null || column.Value.ValueKind != JsonValueKind.Array) continue;
            if (column.Value.GetArrayLength() != dates.Count) throw new WeatherException($"{column.Name} has {column.Value.GetArrayLength()} values for {dates.Count} days.", "Fetch it again: the answer is not whole.");
            var unit = units.TryGetProperty(column.Name, out var u) ? u.ToString() : "";
            var i = 0;
            foreach (var v in column.Value.EnumerateArray())
            {
                if (v.ValueKind == JsonValueKind.Number) OpenMeteoNames.Set(table, dates[i], column.Name, unit, v.GetDouble(), i + 1);
                else if (v.ValueKind != JsonValueKind.Null) table.Drop("no number", i + 1);
                i++;
            }
        }
        return table;
    }
}
