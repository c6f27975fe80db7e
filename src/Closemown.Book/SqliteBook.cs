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
    private SameFile same;
    private BookException? failure;
    private BookException? outside;
    private BookDamage? damage;
    private (long Seq, string Hash) known = (0, HashChain.Genesis);
    private bool walked;
    private bool disposed;

    internal SqliteBook(string path, BookOptions options)
    {
        this.options = options;
        Where = path;
        connection = BookFile.Connect(path, options);
        same = new(path);
    }

    public string Where { get; }

    public BookDamage? Damage
    {
        get
        {
            if (!options.SoundPart) return null;
            if (!walked) ReadAll();
            if (damage is null) ReadWeatherKept();
            return damage;
        }
    }

    public long Count => Reading(c => Sound(BookFile.Number(c, "select coalesce(max(seq), 0) from entry")));

    public BookStamp Stamp => Reading(c =>
    {
        StaysTheSame(c);
        // What is left of a damaged book does not go on.
        if (damage is not null) return new(known.Seq, 0);
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
            if (outside is not null) throw outside;
            if (damage is not null) throw damage.TakesNone();
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
            if (known.Seq > 0 && BookFile.HashAt(connection, known.Seq) != known.Hash) throw LeftOut();
            (same, outside) = (new(Where), null);
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
        var entries = new List<StoredEntry>();
        using var transaction = c.BeginTransaction(deferred: true);        // one state of the book, though others append
        Walk(c, after, upTo, (seq, json, hash) => entries.Add(new(seq, Parse(json, "entry", seq), hash)));
        return entries;
    });

    public IReadOnlyList<Entry> ReadWeather() => Reading(c =>
    {
        using var transaction = c.BeginTransaction(deferred: true);
        var voiders = $"select json from entry where instr(json, '\"voids\":') > 0 and seq <= {Sound(long.MaxValue)} order by seq";
        return Arrivals.Latest(Weather(c), Lines(c, voiders).Select(json => Parse(json, "a correction")).Where(e => e.Voids is not null));
    });

    public IReadOnlyList<Entry> ReadWeatherKept() => Reading(c =>
    {
        using var transaction = c.BeginTransaction(deferred: true);
        return Weather(c);
    });

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
            catch (Exception e) when (BookException.IsUnreadable(e))
            {
                throw BookException.From(e, Where);
            }
        }
    }

    /// <summary>No further than what is sound.</summary>
    private long Sound(long seq) => damage?.FromEntry is { } from ? Math.Min(seq, from - 1) : seq;

    /// <summary>Sees that the file is still the one that was opened. What is found otherwise holds until this book is closed.</summary>
    private void StaysTheSame(SqliteConnection open)
    {
        if (outside is null && same.Trouble(open, seq => HashHeld(open, seq)) is { } what) outside = BookException.ChangedOutside(Where, what);
        if (outside is null) return;
        // What is in the log belongs to the file that is gone: written into the one that lies there now it would damage that.
        LoneFile.LeaveLog(open, true);
        throw outside;
    }

    private static string? HashHeld(SqliteConnection open, long seq)
    {
        try
        {
            return BookFile.HashAt(open, seq);
        }
        catch (Exception e) when (BookException.IsUnreadable(e))
        {
            return null;
        }
    }

    /// <summary>Where the commit wrote the log into the file, notes how far that has come. What is found otherwise is told by the next append: this one is done.</summary>
    private void NoteCheckpoint(SqliteConnection open)
    {
        try
        {
            StaysTheSame(open);
        }
        catch (BookException)
        {
            // It is kept, and thrown by whatever comes next.
        }
    }

    private BookException LeftOut() => BookException.ChangedOutside(Where, $"entry {known.Seq}, which this program has seen in it, is not in it any more");

    /// <summary>Goes along the chain after a number; only right inside a transaction.</summary>
    /// <param name="open">The book.</param>
    /// <param name="after">The number after which to begin.</param>
    /// <param name="upTo">The last number wanted.</param>
    /// <param name="each">Takes each entry's number, line and hash.</param>
    private void Walk(SqliteConnection open, long after, long upTo, Action<long, string, string>? each)
    {
        if (damage is not null && !options.SoundPart) throw damage.ToException();
        upTo = Sound(upTo);
        var (at, hash) = (after, after == 0 ? HashChain.Genesis : "");
        try
        {
            using (var command = open.CreateCommand())
            {
                command.CommandText = "select seq, json, hash from entry where seq >= $after and seq <= $upTo order by seq";
                command.Parameters.AddWithValue("$after", after);
                command.Parameters.AddWithValue("$upTo", upTo);
                using var reader = command.ExecuteReader();
                if (after > 0)
                {
                    var there = reader.Read() && reader.GetInt64(0) == after;
                    if (after == known.Seq && (!there || reader.GetString(2) != known.Hash)) throw outside = LeftOut();
                    if (!there) return;
                    hash = reader.GetString(2);
                }
                Walk(reader, ref at, ref hash, each);
            }
            if (after <= known.Seq && upTo == Sound(long.MaxValue))
            {
                if (!walked && damage is null) Counted(open, at);
                walked = true;
            }
        }
        catch (Exception e) when (IsDamaged(e))
        {
            damage ??= BookDamage.Unreadable(at + 1, e);
            walked = true;
            if (!options.SoundPart) throw damage.ToException();
        }
        finally
        {
            if (after <= known.Seq && at > known.Seq) known = (at, hash);
        }
    }

    private void Walk(SqliteDataReader reader, ref long at, ref string hash, Action<long, string, string>? each)
    {
        var chain = new ChainWalk();
        var fits = chain.Begin(hash);
        while (reader.Read())
        {
            var (seq, json, next) = (reader.GetInt64(0), reader.GetString(1), reader.GetString(2));
            // The bytes as they lie in the row: a text made of them, and bytes of that again, would cost as much as the hash.
            if (!fits || seq != at + 1 || !chain.Takes(SQLitePCL.raw.sqlite3_column_blob(reader.Handle!, 1), next))
            {
                damage = BookDamage.Chain(at + 1);
                throw damage.ToException();
            }
            each?.Invoke(seq, json, next);
            (at, hash) = (seq, next);
        }
    }

    /// <summary>The chain does not tell whether its end is missing; the index of ids does.</summary>
    private void Counted(SqliteConnection open, long rows)
    {
        var ids = BookFile.Number(open, "select count(*) from entry indexed by sqlite_autoindex_entry_1");
        if (ids == rows) return;
        damage = BookDamage.Missing(rows + 1, ids, rows);
        throw damage.ToException();
    }

    private static bool IsDamaged(Exception e) =>
        e is BookException { Trouble: BookTrouble.Damaged } or SqliteException { SqliteErrorCode: 1 or 10 or 11 or 26 } || BookException.IsDamage(e);

    private List<Entry> Weather(SqliteConnection open)
    {
        var hashed = BookFile.Number(open, "pragma user_version") >= BookFormat.WeatherHashed;
        var (kept, bad) = (new List<Entry>(), 0L);
        try
        {
            using var command = open.CreateCommand();
            command.CommandText = hashed
                ? "select w.json, h.hash from weather w left join weather_hash h on h.id = w.id order by w.seq"
                : "select json, '' from weather order by seq";
            using var reader = command.ExecuteReader();
            while (reader.Read())
            {
                var json = reader.GetString(0);
                if (hashed && (reader.IsDBNull(1) || reader.GetString(1) != HashChain.Of(json))) bad++;
                else kept.Add(Parse(json, "a row of weather"));
            }
            if (hashed) bad += Math.Max(0, BookFile.Number(open, "select count(*) from weather_hash") - kept.Count - bad);
        }
        catch (Exception e) when (IsDamaged(e))
        {
            return OfWeather(kept, 1, $"Weather cannot be read to its end ({e.Message.TrimEnd('.')})");
        }
        return bad == 0 ? kept : OfWeather(kept, bad, $"{bad} of weather {(bad == 1 ? "is" : "are")} missing or not what was written");
    }

    private List<Entry> OfWeather(List<Entry> kept, long bad, string what)
    {
        var found = BookDamage.OfWeather(bad, what);
        if (!options.SoundPart) throw found.ToException();
        damage = damage is null ? found : damage with { Weather = bad };
        return kept;
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
            StaysTheSame(open);                            // before SQLite stumbles over a file that is another
            transaction = open.BeginTransaction();         // IMMEDIATE: the last row read is the last row there is
            StaysTheSame(open);
            Walk(open, known.Seq, long.MaxValue, null);    // and follows, link by link, from what this program has seen
            if (damage is not null) throw damage.TakesNone();
            using var writer = new RowWriter(open, known.Seq, known.Hash);
            var results = new List<AppendResult>(entries.Count);
            foreach (var entry in entries) results.Add(writer.Append(entry));
            if (allOrNone && results.Contains(AppendResult.Conflict)) return Arrivals.Withhold(results);
            BeforeCommit?.Invoke();
            transaction.Commit();
            known = writer.Last;
            NoteCheckpoint(open);
            return results;
        }
        catch (Exception e) when (e is SqliteException or IOException or UnauthorizedAccessException || BookException.IsDamage(e))
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

    private static List<string> Lines(SqliteConnection open, string sql)
    {
        using var command = open.CreateCommand();
        command.CommandText = sql;
        using var reader = command.ExecuteReader();
        var lines = new List<string>();
        while (reader.Read()) lines.Add(reader.GetString(0));
        return lines;
    }

    private static Entry Parse(string json, string what, long seq = 0)
    {
        var faults = EntryReader.Read(json, EntryContext.Bound, out var entry);
        return entry ?? throw new BookException(BookTrouble.Damaged, $"The book cannot be read at {what}{(seq > 0 ? $" {seq}" : "")}: {faults[0]}",
            "Verify the book; it says which row is damaged and what to do.");
    }
}
