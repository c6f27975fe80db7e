using Closemown.Entries;

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
        return Write([.. store.ReadAll().Select(s => s.Entry)], store.ReadWeatherKept(), writer);
    }

    /// <summary>Writes what can still be trusted of a damaged book.</summary>
    public static ExportReport Write(Salvaged salvaged, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(salvaged);
        return Write(salvaged.Entries, salvaged.Weather, writer);
    }

    private static ExportReport Write(IReadOnlyList<Entry> entries, IReadOnlyList<Entry> weather, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(writer);
        foreach (var e in entries) Line(writer, e.Json);
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
