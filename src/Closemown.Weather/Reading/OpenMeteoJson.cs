using System.Text.Json;

namespace Closemown.Weather;

/// <summary>Open-Meteo's JSON: parallel arrays under <c>daily</c>, units under <c>daily_units</c>. Data licence CC BY 4.0.</summary>
internal static class OpenMeteoJson
{
    /// <param name="json">One place's answer, or a list of them.</param>
    /// <param name="place">Which place of several, counted from 1; null for the only one.</param>
    /// <exception cref="WeatherException">It is cut off, has no days, several places of which none is named, or comes in a unit that is not known.</exception>
    public static WeatherTable Read(string json, int? place = null)
    {
        try
        {
            using var document = JsonDocument.Parse(json);
            var root = document.RootElement;
            JsonElement[] places = root.ValueKind == JsonValueKind.Array ? [.. root.EnumerateArray()] : [root];
            return Read(places[PlaceOf.Index([.. places.Select(p => (Number(p, "latitude"), Number(p, "longitude")))], place)]);
        }
        // Half a character of two in a name or a text is found only when it is read.
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            throw new WeatherException("The JSON is cut off or broken.", "Fetch it again.");
        }
    }

    private static string Number(JsonElement place, string name) => place.ValueKind == JsonValueKind.Object && place.TryGetProperty(name, out var n) ? n.ToString() : "not told";

    private static WeatherTable Read(JsonElement root)
    {
        if (root.ValueKind == JsonValueKind.Object && root.TryGetProperty("error", out var error) && error.ValueKind == JsonValueKind.True)
            throw new WeatherException($"The service refused: {(root.TryGetProperty("reason", out var r) ? r.ToString() : "no reason given")}.", "Correct what it names.");
        if (root.ValueKind != JsonValueKind.Object || !root.TryGetProperty("daily", out var daily) || daily.ValueKind != JsonValueKind.Object || !daily.TryGetProperty("time", out var time) || time.ValueKind != JsonValueKind.Array)
            throw OpenMeteoNames.NoDays(root.ValueKind == JsonValueKind.Object && (root.TryGetProperty("hourly", out _) || root.TryGetProperty("minutely_15", out _)));
        if (!root.TryGetProperty("daily_units", out var units) || units.ValueKind != JsonValueKind.Object) throw new WeatherException("The JSON does not say its units.", "Fetch it again with its daily_units.");
        var table = new WeatherTable();
        var dates = new List<DateOnly>();
        var days = new DailyOnly();
        foreach (var t in time.EnumerateArray())
        {
            var stamp = DayStamp.Of(t.ToString(), "ymd") ?? throw new WeatherException($"\"{t}\" is no day.", "Ask for dates in ISO 8601.");
            days.See(stamp, dates.Count + 1);
            dates.Add(stamp.Date);
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
