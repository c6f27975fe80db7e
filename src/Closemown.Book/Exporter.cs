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

    /// <summary>Writes into a new file: under another name first, so that a full disk leaves nothing behind under this one.</summary>
    /// <param name="path">The file; there is none yet.</param>
    /// <param name="write">Writes the lines.</param>
    /// <exception cref="BookException">There is such a file, or it cannot be written.</exception>
    public static ExportReport ToFile(string path, Func<TextWriter, ExportReport> write)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        ArgumentNullException.ThrowIfNull(write);
        path = Path.GetFullPath(path);
        Refuse(path);
        var part = $"{path}.{Convert.ToHexStringLower(System.Security.Cryptography.RandomNumberGenerator.GetBytes(6))}.part";
        try
        {
            ExportReport report;
            using (var file = new FileStream(part, FileMode.CreateNew))
            using (var text = new StreamWriter(file))
            {
                report = write(text);
                text.Flush();
                file.Flush(flushToDisk: true);
            }
            Refuse(path);
            File.Move(part, path, overwrite: false);
            return report;
        }
        catch (DirectoryNotFoundException e)
        {
            throw new BookException(BookTrouble.BadPlace, $"There is no folder {Path.GetDirectoryName(path)}.", "Make it first, or give another path.", e);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw BookException.From(e, path);
        }
        finally
        {
            if (File.Exists(part)) File.Delete(part);
        }
    }

    private static void Refuse(string path)
    {
        if (File.Exists(path) || Directory.Exists(path))
            throw new BookException(BookTrouble.Exists, $"{path} exists already; an export overwrites nothing.", "Give another name, or move that file away.");
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
