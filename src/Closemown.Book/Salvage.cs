using Closemown.Entries;
using Microsoft.Data.Sqlite;

namespace Closemown.Book;

/// <summary>What can still be trusted of a book, damaged or not.</summary>
/// <param name="Entries">Entries whose link of the chain fits, by arrival.</param>
/// <param name="Weather">Weather whose hash fits, by arrival.</param>
/// <param name="Untrusted">Rows that were reached but do not fit what was written: they, or the row before them, are damaged.</param>
/// <param name="Whole">Whether all rows could be reached.</param>
public sealed record Salvaged(IReadOnlyList<Entry> Entries, IReadOnlyList<Entry> Weather, long Untrusted, bool Whole)
{
    public IEnumerable<Entry> All => Entries.Concat(Weather);
}

/// <summary>Reads what can be read of a damaged book, from a copy: opening a database may already change it.</summary>
public static class Salvage
{
    /// <summary>Reads a book's file and its log; a file that is no database gives nothing.</summary>
    /// <exception cref="BookException">The file is missing, or cannot be copied.</exception>
    public static Salvaged Read(string book)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(book);
        book = BookFile.Real(book);
        if (!File.Exists(book)) throw BookException.Missing(book);
        if (new FileInfo(book).Length == 0 && !File.Exists(book + "-wal")) return new([], [], 0, true);
        var scratch = Directory.CreateTempSubdirectory("closemown-salvage-").FullName;
        try
        {
            var copy = Path.Combine(scratch, "book");
            File.Copy(book, copy);
            foreach (var beside in new[] { "-wal", "-journal" })
            {
                if (File.Exists(book + beside)) File.Copy(book + beside, copy + beside);
            }
            return FromCopy(copy);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw BookException.From(e, book);
        }
        finally
        {
            Directory.Delete(scratch, recursive: true);
        }
    }

    private static Salvaged FromCopy(string copy)
    {
        try
        {
            DropForeignLog(copy);
            using var connection = BookFile.OpenRaw(copy, SqliteOpenMode.ReadWrite);
            BookFile.Run(connection, "pragma query_only = on");
            var hashed = BookFile.Number(connection, "pragma user_version") >= BookFormat.WeatherHashed;
            var (rows, wholeChain) = Rows(connection, "select seq, id, json, hash from entry");
            var (weatherRows, wholeWeather) = Rows(connection, hashed
                ? "select seq, id, json, (select hash from weather_hash h where h.id = weather.id) from weather"
                : "select seq, id, json, '' from weather");
            var (entries, bad) = Trusted(rows);
            var weather = weatherRows.Where(r => !hashed || r.Hash == HashChain.Of(r.Json)).Select(Parsed).OfType<Entry>().Where(e => e.Is(WeatherEntry.Kind)).ToList();
            return new(entries, weather, bad + weatherRows.Count - weather.Count, wholeChain && wholeWeather);
        }
        catch (Exception e) when (e is SqliteException || BookException.IsDamage(e))
        {
            return new([], [], 0, false);
        }
    }

    /// <summary>A log that is not the file's is not followed: the file by itself is read.</summary>
    private static void DropForeignLog(string copy)
    {
        try
        {
            using (var connection = BookFile.OpenRaw(copy, SqliteOpenMode.ReadWrite))
            {
                if (BookFile.ForeignLog(connection, copy) is null) return;
            }
            foreach (var beside in new[] { "-wal", "-shm" }) File.Delete(copy + beside);
        }
        catch (Exception e) when (e is SqliteException || BookException.IsDamage(e))
        {
            // Read as far as it goes.
        }
    }

    private static (List<Entry> Entries, long Bad) Trusted(List<Row> rows)
    {
        var (entries, bad) = (new List<Entry>(rows.Count), 0L);
        (long Seq, string Hash) before = (0, HashChain.Genesis);
        foreach (var row in rows)
        {
            var fits = before.Seq == row.Seq - 1 && IsHash(before.Hash) && HashChain.Next(before.Hash, row.Json) == row.Hash;
            if (fits && Parsed(row) is { } entry && !entry.Is(WeatherEntry.Kind)) entries.Add(entry);
            else bad++;
            before = (row.Seq, row.Hash);
        }
        return (entries, bad);
    }

    private static Entry? Parsed(Row row) =>
        EntryReader.Read(row.Json, EntryContext.Stored, out var entry).Count == 0 && entry!.Json == row.Json && entry.Id.ToString("D") == row.Id ? entry : null;

    private static bool IsHash(string text) => text.Length == 64 && text.All(char.IsAsciiHexDigit);

    /// <summary>The rows from the front as far as they can be read, then from the back.</summary>
    private static (List<Row> Rows, bool Whole) Rows(SqliteConnection connection, string sql)
    {
        var rows = new List<Row>();
        if (Take(connection, $"{sql} order by seq", rows)) return (rows, true);
        var back = new List<Row>();
        var after = rows.Count > 0 ? rows[^1].Seq : 0;
        Take(connection, $"{sql} where seq > {after} order by seq desc", back);
        back.Reverse();
        rows.AddRange(back);
        return (rows, false);
    }

    private static bool Take(SqliteConnection connection, string sql, List<Row> into)
    {
        try
        {
            using var command = connection.CreateCommand();
            command.CommandText = sql;
            using var reader = command.ExecuteReader();
            while (reader.Read()) into.Add(new(reader.GetInt64(0), reader.GetString(1), reader.GetString(2), reader.IsDBNull(3) ? "" : reader.GetString(3)));
            return true;
        }
        catch (Exception e) when (e is SqliteException or InvalidCastException or InvalidOperationException or FormatException)
        {
            return false;
        }
    }

    private sealed record Row(long Seq, string Id, string Json, string Hash);
}
