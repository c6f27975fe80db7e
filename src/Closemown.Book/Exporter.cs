namespace Closemown.Book;

/// <summary>What an export wrote.</summary>
public sealed record ExportReport(long Entries, long Weather)
{
    public long Lines => Entries + Weather;
}

/// <summary>Writes a book as JSON Lines: the entries by arrival, so that an import makes the same chain, then the weather kept.</summary>
public static class Exporter
{
    public static ExportReport Write(IEntryStore store, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(store);
        ArgumentNullException.ThrowIfNull(writer);
        var entries = store.ReadAll();
        foreach (var stored in entries) Line(writer, stored.Entry.Json);
        var weather = store.ReadWeatherKept();
        foreach (var e in weather) Line(writer, e.Json);
        writer.Flush();
        return new(entries.Count, weather.Count);
    }

    private static void Line(TextWriter writer, string json)
    {
        writer.Write(json);
        writer.Write('\n');
    }
}
