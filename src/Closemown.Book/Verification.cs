using System.Text.RegularExpressions;
using Closemown.Entries;
using Microsoft.Data.Sqlite;

namespace Closemown.Book;

/// <summary>Something wrong with a book.</summary>
/// <param name="Table">"entry", "weather", or empty where it concerns the file.</param>
/// <param name="Row">The number of the row, 0 where it concerns no row.</param>
/// <param name="Message">What is wrong.</param>
/// <param name="Remedy">What to do.</param>
public sealed record VerificationProblem(string Table, long Row, string Message, string Remedy)
{
    public override string ToString() => $"{(Row > 0 ? $"{Table} {Row}: " : "")}{Message} {Remedy}";

    internal BookException ToException() => new(BookTrouble.Damaged, Row > 0 ? $"{Table} {Row}: {Message}" : Message, Remedy);
}

/// <summary>What a check of a book found.</summary>
/// <param name="Path">The book.</param>
/// <param name="Version">The version of its format.</param>
/// <param name="Entries">Entries in the chain.</param>
/// <param name="Weather">Rows of weather.</param>
/// <param name="Head">The chain's last hash, as reckoned anew; compare it with one noted earlier.</param>
/// <param name="Problems">What is wrong, the first row first; at most <see cref="Verification.MostProblems"/>.</param>
public sealed record VerificationReport(string Path, int Version, long Entries, long Weather, string Head, IReadOnlyList<VerificationProblem> Problems)
{
    public bool Ok => Problems.Count == 0;
}

/// <summary>Checks a book from end to end, without changing it.</summary>
public static partial class Verification
{
    /// <summary>How many problems are listed.</summary>
    public const int MostProblems = 20;

    private const string GoBack = "Keep this file as it is and go back to the latest backup: closemown book restore BACKUP --merge also brings in what can still be read here.";

    /// <summary>Checks the file's structure, its guards, the chain, and every row.</summary>
    /// <exception cref="BookException">The file is missing, no book, or of a newer format.</exception>
    public static VerificationReport Run(string path)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        path = BookFile.Real(path);
        var problems = new Problems();
        var (version, entries, weather, head) = (0, 0L, 0L, HashChain.Genesis);
        try
        {
            using var connection = BookFile.Connect(path, new BookOptions { ReadOnly = true });
            using var transaction = connection.BeginTransaction(deferred: true);       // one state of the book, though others append
            version = (int)BookFile.Number(connection, "pragma user_version");
            Structure(connection, problems);
            Guards(connection, version, problems);
            (entries, head) = Chain(connection, problems);
            weather = Weather(connection, version, problems);
        }
        catch (BookException e) when (e.Trouble is BookTrouble.Damaged or BookTrouble.InputOutput)
        {
            problems.Add("", 0, e.Message, GoBack);
        }
        catch (SqliteException e)
        {
            var told = BookException.From(e, path);
            if (told.Trouble is BookTrouble.Locked) throw told;
            problems.Add("", 0, $"The file cannot be read to its end ({e.Message}).", GoBack);
        }
        catch (Exception e) when (e is InvalidCastException or InvalidOperationException or FormatException)
        {
            problems.Add("", 0, $"A row holds values of the wrong type ({e.Message}).", GoBack);
        }
        return new(path, version, entries, weather, head, problems.List);
    }

    private static void Structure(SqliteConnection connection, Problems problems)
    {
        using var command = connection.CreateCommand();
        command.CommandText = $"pragma integrity_check({MostProblems})";
        using var reader = command.ExecuteReader();
        while (reader.Read())
        {
            if (reader.GetString(0) is var found and not "ok") problems.Add("", 0, $"The database is damaged: {found}.", GoBack);
        }
    }

    private static void Guards(SqliteConnection connection, int version, Problems problems)
    {
        const string Changed = "Another program changed the book: check what it did, and go back to a backup, or export this book and import it into a new one.";
        var (found, triggers) = (new HashSet<string>(StringComparer.Ordinal), new HashSet<string>(StringComparer.Ordinal));
        using (var command = connection.CreateCommand())
        {
            command.CommandText = "select sql, type, name from sqlite_schema where sql is not null";
            using var reader = command.ExecuteReader();
            while (reader.Read())
            {
                found.Add(Plain(reader.GetString(0)));
                if (reader.GetString(1) == "trigger") triggers.Add(reader.GetString(2));
            }
        }
        foreach (var sql in BookFormat.Guards(version))
        {
            var name = sql.Split(' ')[2];
            triggers.Remove(name);
            if (!found.Contains(Plain(sql))) problems.Add("", 0, $"The {sql.Split(' ')[1]} {name} is missing or was altered.", Changed);
        }
        // A trigger can change what a later write does.
        foreach (var name in triggers.Order(StringComparer.Ordinal)) problems.Add("", 0, $"The trigger {Spelling.Clip(name)} is none of a book's.", Changed);

        static string Plain(string sql) => Space().Replace(sql, " ").ToLowerInvariant();
    }

    private static (long Count, string Head) Chain(SqliteConnection connection, Problems problems)
    {
        using var command = connection.CreateCommand();
        command.CommandText = "select seq, id, json, hash from entry order by seq";
        using var reader = command.ExecuteReader();
        var (count, head, wanted) = (0L, HashChain.Genesis, 1L);
        while (reader.Read())
        {
            var (seq, json, stored) = (reader.GetInt64(0), reader.GetString(2), reader.GetString(3));
            if (seq != wanted) problems.Add("entry", seq, $"Entry {wanted} is missing before it.", GoBack);
            if (!IsHash(stored) || HashChain.Next(head, json) != stored)
                problems.Add("entry", seq, "The chain is broken: this entry, or the one before it, is not what was written.", GoBack);
            Row("entry", seq, reader.GetString(1), json, problems, e => e.Is(WeatherEntry.Kind) ? "weather lies among the entries" : null);
            (count, head, wanted) = (count + 1, IsHash(stored) ? stored : head, seq + 1);
        }
        return (count, head);
    }

    private static long Weather(SqliteConnection connection, int version, Problems problems)
    {
        var hashed = version >= BookFormat.WeatherHashed;
        using var command = connection.CreateCommand();
        command.CommandText = $"select seq, id, json, area, date, source, forecast{(hashed ? ", (select hash from weather_hash h where h.id = w.id)" : "")} from weather w order by seq";
        using var reader = command.ExecuteReader();
        var count = 0L;
        while (reader.Read())
        {
            count++;
            var json = reader.GetString(2);
            var day = new WeatherDay(reader.GetString(3), reader.GetString(4), reader.GetString(5), reader.GetInt64(6) == 1);
            if (hashed && (reader.IsDBNull(7) || reader.GetString(7) != HashChain.Of(json))) problems.Add("weather", reader.GetInt64(0), "Its hash does not fit: it is not what was written.", GoBack);
            Row("weather", reader.GetInt64(0), reader.GetString(1), json, problems,
                e => !e.Is(WeatherEntry.Kind) ? "it is no weather" : WeatherDay.Of(e) != day ? "its columns do not agree with its line" : null);
        }
        if (hashed && BookFile.Number(connection, "select count(*) from weather_hash where id not in (select id from weather)") is > 0 and var gone)
            problems.Add("weather", 0, $"{gone} of weather that a hash is kept of {(gone == 1 ? "is" : "are")} missing.", GoBack);
        return count;
    }

    private static void Row(string table, long row, string id, string json, Problems problems, Func<Entry, string?> wrong)
    {
        var faults = EntryReader.Read(json, EntryContext.Stored, out var entry);
        if (entry is null) problems.Add(table, row, $"It is no entry: {faults[0]}", GoBack);
        else if (entry.Json != json) problems.Add(table, row, "It is not written in the canonical form.", GoBack);
        else if (entry.Id.ToString("D") != id) problems.Add(table, row, $"Its id {entry.Id} is filed under {Spelling.Clip(id)}.", GoBack);
        else if (wrong(entry) is { } what) problems.Add(table, row, $"Something is wrong: {what}.", GoBack);
    }

    private static bool IsHash(string text) => text.Length == 64 && text.All(char.IsAsciiHexDigit);

    [GeneratedRegex(@"\s+")]
    private static partial Regex Space();

    private sealed class Problems
    {
        public List<VerificationProblem> List { get; } = [];

        public void Add(string table, long row, string message, string remedy)
        {
            if (List.Count < MostProblems) List.Add(new(table, row, message, remedy));
        }
    }
}
