using System.Runtime.InteropServices;
using Microsoft.Data.Sqlite;

namespace Closemown.Book;

/// <summary>An entry of a book's file whose link of the chain fits, and so was certainly written by a book.</summary>
/// <param name="Seq">Its number.</param>
/// <param name="Hash">Its hash.</param>
/// <param name="AtEnd">Whether it is the last of the file; else the last of those that could be reached from the front.</param>
/// <param name="Weather">The number of the last weather in the file, where all of it could be read; else 0.</param>
internal readonly record struct LastLink(long Seq, string Hash, bool AtEnd, long Weather);

/// <summary>A book's file read by itself: without its log, without a lock, and without writing anything beside it.</summary>
internal static class LoneFile
{
    private const int NoCheckpointOnClose = 1006, HasMovedOp = 20;

    /// <summary>How far back a link that fits is looked for: a checkpoint that was cut off leaves the last pages half old, half new.</summary>
    private const int Furthest = 5000;

    /// <summary>A path as SQLite reads it in a URI, told that nothing changes the file meanwhile.</summary>
    public static string Uri(string path)
    {
        var parts = path.Split(Path.DirectorySeparatorChar, Path.AltDirectorySeparatorChar).Select(System.Uri.EscapeDataString);
        var whole = string.Join('/', parts);
        return $"file://{(whole.StartsWith('/') ? "" : "/")}{whole}?immutable=1";
    }

    public static SqliteConnection Open(string path, int waitSeconds = 1) => BookFile.OpenRaw(Uri(path), SqliteOpenMode.ReadOnly, waitSeconds);

    /// <summary>The last entry in the file itself that certainly was written by a book; null where none can be told.</summary>
    public static LastLink? Last(string path)
    {
        try
        {
            using var connection = Open(path);
            return FromEnd(connection) ?? FromFront(connection);
        }
        catch (Exception e) when (BookException.IsUnreadable(e))
        {
            return null;
        }
    }

    private static LastLink? FromEnd(SqliteConnection connection)
    {
        try
        {
            using var command = connection.CreateCommand();
            command.CommandText = "select e.seq, e.json, e.hash, b.hash from entry e left join entry b on b.seq = e.seq - 1 order by e.seq desc limit $most";
            command.Parameters.AddWithValue("$most", Furthest);
            using var reader = command.ExecuteReader();
            var walk = new ChainWalk();
            while (reader.Read())
            {
                if (reader.IsDBNull(0) || reader.IsDBNull(1) || reader.IsDBNull(2)) continue;
                var seq = reader.GetInt64(0);
                var before = seq == 1 ? HashChain.Genesis : reader.IsDBNull(3) ? "" : reader.GetString(3);
                if (walk.Begin(before) && walk.Takes(reader.GetString(1), reader.GetString(2))) return new(seq, reader.GetString(2), AtEnd: true, Weather(connection));
            }
        }
        catch (Exception e) when (BookException.IsUnreadable(e))
        {
            // A checkpoint is under way or was cut off: the file's end is not there yet.
        }
        return null;
    }

    private static long Weather(SqliteConnection connection) => BookFile.Number(connection, "select coalesce(max(seq), 0) from weather");

    private static LastLink? FromFront(SqliteConnection connection)
    {
        LastLink? last = null;
        try
        {
            using var command = connection.CreateCommand();
            command.CommandText = "select seq, json, hash from entry order by seq";
            using var reader = command.ExecuteReader();
            var walk = new ChainWalk();
            walk.Begin(HashChain.Genesis);
            while (reader.Read() && walk.Takes(reader.GetString(1), reader.GetString(2))) last = new(reader.GetInt64(0), reader.GetString(2), AtEnd: false, 0);
        }
        catch (Exception e) when (BookException.IsUnreadable(e))
        {
            // As far as it goes.
        }
        return last;
    }

    /// <summary>Whether the file has a book's marks: read as bytes of the database's first page, past the log.</summary>
    public static bool IsMarked(string path)
    {
        try
        {
            using var connection = Open(path);
            return BookFile.Number(connection, "pragma application_id") == BookFormat.ApplicationId;
        }
        catch (Exception e) when (BookException.IsUnreadable(e))
        {
            return false;
        }
    }

    /// <summary>Whether another file, or none, lies where a connection's file lay when it was opened; false where the system does not tell.</summary>
    /// <remarks>SQLITE_FCNTL_HAS_MOVED, which SQLite answers on Unix only; on Windows a file that is open can be neither moved nor deleted.</remarks>
    public static bool HasMoved(SqliteConnection connection)
    {
        var moved = 0;
        try
        {
            return Native.FileControl(connection.Handle!.DangerousGetHandle(), "main", HasMovedOp, ref moved) == 0 && moved != 0;
        }
        catch (Exception e) when (e is DllNotFoundException or EntryPointNotFoundException)
        {
            return false;
        }
    }

    /// <summary>Whether the connection, if it is the last one, leaves the log where it lies when it is closed.</summary>
    public static void LeaveLog(SqliteConnection connection, bool leave) =>
        _ = SQLitePCL.raw.sqlite3_db_config(connection.Handle!, NoCheckpointOnClose, leave ? 1 : 0, out _);

    private static class Native
    {
        [DllImport("e_sqlite3", EntryPoint = "sqlite3_file_control")]
        [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories | DllImportSearchPath.AssemblyDirectory)]
        public static extern int FileControl(nint db, [MarshalAs(UnmanagedType.LPUTF8Str)] string name, int op, ref int value);
    }
}
