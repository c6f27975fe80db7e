using Microsoft.Data.Sqlite;

namespace Closemown.Book;

/// <summary>Looks whether a book's file is still the one that was opened.</summary>
/// <remarks>
/// Two questions. Does another file lie at the path: the system knows. Was the file written over where it lies: its size and time
/// tell that something wrote to it, which a checkpoint does too; then the file is read by itself. A checkpoint only ever brings
/// it further on, so it must hold no less than before, and nothing that the book does not.
/// </remarks>
internal sealed class SameFile
{
    private const int Tries = 5, BetweenTriesMs = 20;
    private readonly string path;
    private (long Length, DateTime Written) mark;
    private (long Entry, long Weather) reached;

    /// <summary>Notes how far the file has come by itself.</summary>
    public SameFile(string path)
    {
        this.path = path;
        mark = Mark();
        reached = LoneFile.Last(path) is { AtEnd: true } last ? (last.Seq, last.Weather) : default;
    }

    /// <summary>What happened to the file; null where nothing did.</summary>
    /// <param name="connection">The connection to it.</param>
    /// <param name="hashAt">The hash that the book has at a number; null where it has no such entry.</param>
    public string? Trouble(SqliteConnection connection, Func<long, string?> hashAt)
    {
        if (LoneFile.HasMoved(connection) || !File.Exists(path))
            return File.Exists(path) ? "another file was put in its place" : "it was moved or removed";
        for (var attempt = 0; ; attempt++)
        {
            var now = Mark();
            if (now == mark) return null;
            if (LoneFile.Last(path) is { } last && Mark() == now)
            {
                if (last.AtEnd && (last.Seq < reached.Entry || last.Weather < reached.Weather))
                    return $"an older copy was written over it: it holds {last.Seq} entries, and held {reached.Entry}{(last.Seq < reached.Entry ? "" : ", and less weather")}";
                if (hashAt(last.Seq) != last.Hash) return $"it was written over: its entry {last.Seq} is not the book's";
                if (last.AtEnd)
                {
                    (mark, reached) = (now, (last.Seq, last.Weather));
                    return null;
                }
            }
            if (attempt < Tries)
            {
                Thread.Sleep(BetweenTriesMs);       // another program may be writing its log into it just now
                continue;
            }
            // Whatever state a log that was being written into it left behind, the file's first page is a book's.
            return LoneFile.IsMarked(path) ? null : "something that is no book was written over it";
        }
    }

    private (long Length, DateTime Written) Mark()
    {
        var file = new FileInfo(path);
        return file.Exists ? (file.Length, file.LastWriteTimeUtc) : default;
    }
}
