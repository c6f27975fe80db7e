using System.Globalization;
using Microsoft.Data.Sqlite;

namespace Closemown.Book;

/// <summary>How a book's file is opened.</summary>
public sealed record BookOptions
{
    /// <summary>Only read; appends are refused and a missing file is an error.</summary>
    public bool ReadOnly { get; init; }

    /// <summary>Make the file, and its folder, where there is none.</summary>
    public bool Create { get; init; } = true;

    /// <summary>Of a damaged book: give the entries before the damage, say so in <see cref="IEntryStore.Damage"/>, and take none. Else a damaged book is refused.</summary>
    public bool SoundPart { get; init; }

    /// <summary>How long to wait for another program that is writing, in whole seconds, at least 1.</summary>
    public int WaitSeconds { get; init; } = 10;
}

/// <summary>Opens books.</summary>
public static class BookFile
{
    /// <summary>The path that stands for a book kept in memory only.</summary>
    public const string InMemory = ":memory:";

    /// <summary>Opens the book at a path, making it where there is none; ":memory:" keeps nothing.</summary>
    /// <exception cref="BookException">The file is no book, is of a newer format, or cannot be used.</exception>
    public static IEntryStore Open(string path, BookOptions? options = null)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        return path == InMemory ? new MemoryBook() : new SqliteBook(Real(path), options ?? new());
    }

    /// <summary>The full path of the file itself: where a link is given, what it leads to. SQLite keeps the log beside that.</summary>
    /// <exception cref="BookException">A link leads nowhere, or round in a circle.</exception>
    public static string Real(string path)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        if (path == InMemory) return path;
        path = Path.GetFullPath(path);
        FileSystemInfo? target;
        try
        {
            target = File.ResolveLinkTarget(path, returnFinalTarget: true);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return path;
        }
        catch (UnauthorizedAccessException e)
        {
            throw BookException.From(e, path);
        }
        catch (IOException)
        {
            throw BookException.Link(path, "that leads back to itself");
        }
        if (target is null) return path;
        return File.Exists(target.FullName) || Directory.Exists(target.FullName) ? target.FullName : throw BookException.Link(path, $"to {target.FullName}, and there is nothing there");
    }

    internal static SqliteConnection Connect(string path, BookOptions options)
    {
        if (Directory.Exists(path))
            throw new BookException(BookTrouble.BadPlace, $"{path} is a folder.", "Give the path of the book's file in it.");
        if (LogCheck.LastEntry(path) is { } && !(new FileInfo(path) is { Exists: true, Length: > 0 })) throw BookException.LogAlone(path);
        if ((options.ReadOnly || !options.Create) && !File.Exists(path)) throw BookException.Missing(path);
        // Shorter than any database: SQLite would take it for an empty one and write over it.
        if (new FileInfo(path) is { Exists: true, Length: > 0 and < 512 }) throw BookException.NotABook(path);
        SqliteConnection? connection = null;
        try
        {
            if (LogCheck.Lost(path) is > 0 and var lost) throw BookException.LogDamaged(path, lost);
            if (options.Create && !options.ReadOnly && Path.GetDirectoryName(path) is { Length: > 0 } folder) Directory.CreateDirectory(folder);
            connection = options.ReadOnly
                ? OpenToRead(path, options.WaitSeconds)
                : OpenRaw(path, options.Create ? SqliteOpenMode.ReadWriteCreate : SqliteOpenMode.ReadWrite, options.WaitSeconds);
            RefuseForeignLog(connection, path);
            // Not opened as read-only: such a connection cannot tidy up the write-ahead log behind it.
            if (options.ReadOnly) Run(connection, "pragma query_only = on");
            CheckSqlite((string)Scalar(connection, "select sqlite_version()")!);
            if (!LooksLikeBook(connection, path))
            {
                if (options.ReadOnly || !options.Create) throw BookException.Empty(path);
                Build(connection, path);
            }
            if (!options.ReadOnly) Prepare(connection);
            return connection;
        }
        catch (Exception e) when (BookException.IsUnreadable(e))
        {
            connection?.Dispose();
            throw BookException.From(e, path);
        }
    }

    /// <summary>A log that is not the file's would take the book's place in silence, and at the end be written into it.</summary>
    /// <remarks>
    /// Entries are only ever added: so the last one found in the file by itself, and the last one found in the log by itself, are
    /// both in what the two give together. Read in this order, as another program may be adding more, or writing its log into the file.
    /// </remarks>
    private static void RefuseForeignLog(SqliteConnection connection, string path)
    {
        if (ForeignLog(connection, path) is not { } why) return;
        LoneFile.LeaveLog(connection, true);
        throw BookException.ForeignLog(path, why);
    }

    /// <summary>Why the log beside a file is not its own; null where it is, or there is none.</summary>
    internal static string? ForeignLog(SqliteConnection connection, string path)
    {
        if (LogCheck.LastEntry(path) is not { } inLog) return null;
        var inFile = LoneFile.Last(path);
        LoneFile.LeaveLog(connection, true);
        if (Number(connection, "select count(*) from sqlite_schema where type = 'table' and name = 'entry'") == 0)
            return inFile is null ? null : "with the log it would be no book";
        var last = Number(connection, "select coalesce(max(seq), 0) from entry");
        if (inFile is { } f && (f.Seq > last || HashAt(connection, f.Seq) != f.Hash))
            return f.Seq > last ? $"the file holds entry {f.Seq}, and with the log the book would end at {last}" : $"with the log entry {f.Seq} would be another than the file's";
        if (inFile is { Weather: > 0 } w && Number(connection, "select coalesce(max(seq), 0) from weather") < w.Weather)
            return "with the log the book would have less weather than the file";
        if (inLog > last) return $"the log holds entry {inLog}, and with this file the book would end at {last}";
        LoneFile.LeaveLog(connection, false);
        return null;
    }

    internal static string? HashAt(SqliteConnection connection, long seq)
    {
        using var command = connection.CreateCommand();
        command.CommandText = "select hash from entry where seq = $seq";
        command.Parameters.AddWithValue("$seq", seq);
        return command.ExecuteScalar() as string;
    }

    private static SqliteConnection OpenToRead(string path, int waitSeconds)
    {
        var connection = OpenRaw(path, SqliteOpenMode.ReadWrite, waitSeconds);
        try
        {
            Number(connection, "pragma application_id");
            return connection;
        }
        catch (SqliteException e) when (e.SqliteErrorCode is 8 or 14 && !File.Exists(path + "-wal"))
        {
            // It lies where nothing can be written: SQLite then reads it without the files it keeps beside it, if told that nothing changes there.
            connection.Dispose();
            return LoneFile.Open(path, waitSeconds);
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }

    internal static SqliteConnection OpenRaw(string path, SqliteOpenMode mode, int waitSeconds = 10)
    {
        var connection = new SqliteConnection(new SqliteConnectionStringBuilder
        {
            DataSource = path,
            Mode = mode,
            Pooling = false,
            DefaultTimeout = Math.Max(1, waitSeconds),
        }.ToString());
        try
        {
            connection.Open();
            Run(connection, $"pragma busy_timeout = {Math.Max(1, waitSeconds) * 1000}; pragma trusted_schema = off; pragma cell_size_check = on;");
            return connection;
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }

    internal static void CheckSqlite(string version)
    {
        if (System.Version.TryParse(version, out var found) && found >= BookFormat.LeastSqlite) return;
        throw new BookException(BookTrouble.UnsafeSqlite, $"The SQLite library is version {version}, which can damage books.",
            $"Use the one that comes with this program: {BookFormat.LeastSqlite} or later.");
    }

    private static bool LooksLikeBook(SqliteConnection connection, string path)
    {
        // One transaction, so one state of the file: another program may be making the book between two looks.
        using var transaction = connection.BeginTransaction(deferred: true);
        return IsBook(connection, path);
    }

    /// <summary>Whether the file is a book this program can read; false where it is empty. Only right inside a transaction.</summary>
    private static bool IsBook(SqliteConnection connection, string path)
    {
        var (id, version) = (Number(connection, "pragma application_id"), Number(connection, "pragma user_version"));
        if (id == 0 && version == 0 && Number(connection, "select count(*) from sqlite_schema") == 0) return false;
        if (id != BookFormat.ApplicationId || version < 1) throw BookException.NotABook(path);
        if (version > BookFormat.Version)
        {
            throw new BookException(BookTrouble.NewerFormat, $"{path} has format version {version}; this program knows up to {BookFormat.Version}.",
                "Use the newer version of Closemown that wrote it. The file was left as it is.");
        }
        return true;
    }

    internal static long Number(SqliteConnection connection, string sql) => Convert.ToInt64(Scalar(connection, sql), CultureInfo.InvariantCulture);

    internal static object? Scalar(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return command.ExecuteScalar();
    }

    internal static void Run(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    private static void Prepare(SqliteConnection connection)
    {
        Run(connection, "pragma journal_mode = wal; pragma synchronous = full; pragma recursive_triggers = on;");
        if (Number(connection, "pragma user_version") < BookFormat.Version) Upgrade(connection);
    }

    private static void Build(SqliteConnection connection, string path)
    {
        using var transaction = connection.BeginTransaction();
        if (IsBook(connection, path)) return;              // another program was quicker
        Run(connection, $"pragma application_id = {BookFormat.ApplicationId}");
        Steps(connection, 0);
        transaction.Commit();
    }

    private static void Upgrade(SqliteConnection connection)
    {
        using var transaction = connection.BeginTransaction();
        Steps(connection, (int)Number(connection, "pragma user_version"));
        transaction.Commit();
    }

    private static void Steps(SqliteConnection connection, int from)
    {
        connection.CreateFunction(BookFormat.HashFunction, (string text) => HashChain.Of(text), isDeterministic: true);
        foreach (var sql in BookFormat.Steps.Skip(from).SelectMany(s => s)) Run(connection, sql);
        Run(connection, $"pragma user_version = {BookFormat.Version}");
    }
}
