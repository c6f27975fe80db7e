using Closemown.Entries;
using Microsoft.Data.Sqlite;

namespace Closemown.Book;

/// <summary>A book in a file. Several programs may append to one file in turn.</summary>
/// <remarks>A write that fails is final: the book refuses appends until <see cref="Reverify"/> has found the file whole.</remarks>
public sealed class SqliteBook : IEntryStore
{
    private readonly Lock gate = new();
    private readonly BookOptions options;
    private SqliteConnection? connection;
    private BookException? failure;
    private bool disposed;

    internal SqliteBook(string path, BookOptions options)
    {
        this.options = options;
        Where = path;
        connection = BookFile.Connect(path, options);
    }

    public string Where { get; }

    public long Count => Reading(c => BookFile.Number(c, "select coalesce(max(seq), 0) from entry"));

    public BookStamp Stamp => Reading(c =>
    {
        using var command = c.CreateCommand();
        command.CommandText = "select (select coalesce(max(seq), 0) from entry), (select coalesce(max(seq), 0) from weather)";
        using var reader = command.ExecuteReader();
        reader.Read();
        return new BookStamp(reader.GetInt64(0), reader.GetInt64(1));
    });

    /// <summary>The format version of the file.</summary>
    public int FormatVersion => Reading(c => (int)BookFile.Number(c, "pragma user_version"));

    /// <summary>Called before a transaction is committed, so that tests can make the disk fail.</summary>
    internal Action? BeforeCommit { get; set; }

    public AppendResult Append(Entry entry) => AppendAll([entry], false)[0];

    public IReadOnlyList<AppendResult> AppendAll(IReadOnlyList<Entry> entries, bool allOrNone)
    {
        ArgumentNullException.ThrowIfNull(entries);
        lock (gate)
        {
            var open = Open();
            if (failure is not null)
            {
                throw new BookException(BookTrouble.Stopped, $"An earlier write to {Where} failed: {failure.Message}",
                    "Nothing more is written until the book has been checked again.", failure);
            }
            if (options.ReadOnly) throw new BookException(BookTrouble.ReadOnly, $"{Where} was opened to be read only.", "Open it for writing.");
            return entries.Count == 0 ? [] : Write(open, entries, allOrNone);
        }
    }

    /// <summary>Opens the file anew and verifies it; where it is whole, appends are taken again.</summary>
    /// <exception cref="BookException">It is not whole, or cannot be opened.</exception>
    public VerificationReport Reverify()
    {
        lock (gate)
        {
            ObjectDisposedException.ThrowIf(disposed, this);
            connection?.Dispose();
            connection = null;
            connection = BookFile.Connect(Where, options);
            var report = Verification.Run(Where);
            if (!report.Ok) throw report.Problems[0].ToException();
            failure = null;
            return report;
        }
    }

    public IReadOnlyList<StoredEntry> ReadAll(long upTo = long.MaxValue) => ReadBetween(0, upTo);

    public IReadOnlyList<StoredEntry> ReadAfter(long seq) => ReadBetween(seq, long.MaxValue);

    public IReadOnlyList<StoredEntry> ReadBetween(long after, long upTo) => Reading(c =>
    {
        using var command = c.CreateCommand();
        command.CommandText = "select seq, json, hash from entry where seq > $after and seq <= $upTo order by seq";
        command.Parameters.AddWithValue("$after", after);
        command.Parameters.AddWithValue("$upTo", upTo);
        using var reader = command.ExecuteReader();
        var entries = new List<StoredEntry>();
        while (reader.Read())
        {
            var seq = reader.GetInt64(0);
            entries.Add(new(seq, Parse(reader.GetString(1), $"entry {seq}"), reader.GetString(2)));
        }
        return entries;
    });

    public IReadOnlyList<Entry> ReadWeather() => Reading(c => Arrivals.Latest(
        Weather(c, "select json from weather order by seq"),
        Weather(c, "select json from entry where instr(json, '\"voids\":') > 0 order by seq").Where(e => e.Voids is not null)));

    public IReadOnlyList<Entry> ReadWeatherKept() => Reading(c => Weather(c, "select json from weather order by seq"));

    public Entry? Find(Guid id) => Reading(c => Json(c, id) is { } json ? Parse(json, $"the entry {id}") : null);

    public string HashAt(long seq)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(seq);
        if (seq == 0) return HashChain.Genesis;
        return Reading(c =>
        {
            using var command = c.CreateCommand();
            command.CommandText = "select hash from entry where seq = $seq";
            command.Parameters.AddWithValue("$seq", seq);
            return command.ExecuteScalar() as string ?? throw new ArgumentOutOfRangeException(nameof(seq), seq, "The book holds fewer entries.");
        });
    }

    public void Dispose()
    {
        lock (gate)
        {
            disposed = true;
            connection?.Dispose();
            connection = null;
        }
    }

    internal T Reading<T>(Func<SqliteConnection, T> read)
    {
        lock (gate)
        {
            try
            {
                return read(Open());
            }
            catch (Exception e) when (e is SqliteException or IOException)
            {
                throw BookException.From(e, Where);
            }
        }
    }

    private SqliteConnection Open()
    {
        ObjectDisposedException.ThrowIf(disposed, this);
        return connection ?? throw new BookException(BookTrouble.Stopped, $"{Where} could not be opened again after a failed write.", "Check the disk, then check the book again.", failure);
    }

    private IReadOnlyList<AppendResult> Write(SqliteConnection open, IReadOnlyList<Entry> entries, bool allOrNone)
    {
        SqliteTransaction? transaction = null;
        try
        {
            transaction = open.BeginTransaction();         // IMMEDIATE: the last row read is the last row there is
            using var writer = new RowWriter(open);
            var results = new List<AppendResult>(entries.Count);
            foreach (var entry in entries) results.Add(writer.Append(entry));
            if (allOrNone && results.Contains(AppendResult.Conflict)) return Arrivals.Withhold(results);
            BeforeCommit?.Invoke();
            transaction.Commit();
            return results;
        }
        catch (Exception e) when (e is SqliteException or IOException or UnauthorizedAccessException)
        {
            var told = BookException.From(e, Where);
            if (told.Trouble is not (BookTrouble.Locked or BookTrouble.ReadOnly)) failure = told;
            throw told;
        }
        finally
        {
            Close(transaction);
        }
    }

    private void Close(SqliteTransaction? transaction)
    {
        try
        {
            transaction?.Dispose();
        }
        catch (SqliteException e)
        {
            failure ??= BookException.From(e, Where);
        }
    }

    internal static string? Json(SqliteConnection open, Guid id)
    {
        using var command = open.CreateCommand();
        command.CommandText = "select json from entry where id = $id union all select json from weather where id = $id";
        command.Parameters.AddWithValue("$id", id.ToString("D"));
        return command.ExecuteScalar() as string;
    }

    internal static List<Entry> Weather(SqliteConnection open, string sql)
    {
        using var command = open.CreateCommand();
        command.CommandText = sql;
        using var reader = command.ExecuteReader();
        var weather = new List<Entry>();
        while (reader.Read()) weather.Add(Parse(reader.GetString(0), "a row of weather or of a correction"));
        return weather;
    }

    private static Entry Parse(string json, string what)
    {
        var faults = EntryReader.Read(json, EntryContext.Stored, out var entry);
        return entry ?? throw new BookException(BookTrouble.Damaged, $"The book cannot be read at {what}: {faults[0]}",
            "Verify the book; it says which row is damaged and what to do.");
    }
}
