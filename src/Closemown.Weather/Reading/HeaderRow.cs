namespace Closemown.Weather;

/// <summary>What layouts of one station with named columns have in common.</summary>
internal static class HeaderRow
{
    /// <summary>Whether a header has all these columns.</summary>
    public static bool Has(string header, char delimiter, params ReadOnlySpan<string> names)
    {
        using var text = new StringReader(header);
        var cells = Rows.Of(text, delimiter).SelectMany(r => r.Cells).ToHashSet(StringComparer.Ordinal);
        foreach (var name in names)
        {
            if (!cells.Contains(name)) return false;
        }
        return true;
    }

    /// <summary>Keeps the first station and refuses another.</summary>
    /// <exception cref="WeatherException">The row is of another station.</exception>
    public static void OneStation(ref string? first, string station, long line)
    {
        first ??= station;
        if (station != first) throw new WeatherException($"Line {line.ToString(System.Globalization.CultureInfo.InvariantCulture)} is of another station ({station}) than the first ({first}).", "Give a file of one station: weather of two places does not mix.");
    }
}
