using Microsoft.Data.Sqlite;

namespace Closemown.Book;

/// <summary>What kind of trouble a book is in.</summary>
public enum BookTrouble
{
    /// <summary>The file is something else.</summary>
    NotABook,

    /// <summary>Written by a later version of the program.</summary>
    NewerFormat,

    /// <summary>There is no such file.</summary>
    Missing,

    /// <summary>There is already a file of that name.</summary>
    Exists,

    /// <summary>Another program holds it.</summary>
    Locked,

    /// <summary>It cannot be written.</summary>
    ReadOnly,

    /// <summary>The disk is full.</summary>
    DiskFull,

    /// <summary>Reading or writing the disk failed.</summary>
    InputOutput,

    /// <summary>Its content is damaged.</summary>
    Damaged,

    /// <summary>An earlier write failed; appends wait for a new check.</summary>
    Stopped,

    /// <summary>The SQLite library has a known fault.</summary>
    UnsafeSqlite,

    /// <summary>The place given for the book cannot be used.</summary>
    BadPlace,
}

/// <summary>Why a book could not be used, and what to do about it.</summary>
public sealed class BookException : Exception
{
    public BookException() : this("The book could not be used.")
    {
    }

    public BookException(string message) : this(message, null)
    {
    }

    public BookException(string message, Exception? inner) : this(BookTrouble.InputOutput, message, "Check the book, then try again.", inner)
    {
    }

    public BookException(BookTrouble trouble, string message, string remedy, Exception? inner = null) : base(message, inner)
    {
        Trouble = trouble;
        Remedy = remedy;
    }

    public BookTrouble Trouble { get; }

    /// <summary>What to do about it.</summary>
    public string Remedy { get; }

    internal static BookException From(Exception e, string path) => e switch
    {
        BookException b => b,
        SqliteException s => FromSqlite(s, path),
        UnauthorizedAccessException => new(BookTrouble.ReadOnly, $"{path} may not be read or written here.", "Check its permissions and its folder's.", e),
        FileNotFoundException or DirectoryNotFoundException => Missing(path, e),
        _ => new(BookTrouble.InputOutput, $"Reading or writing {path} failed ({e.Message}).", "Check the disk, then verify the book.", e),
    };

    internal static BookException Missing(string path, Exception? inner = null) =>
        new(BookTrouble.Missing, $"There is no book at {path}.", "Check the path; a book is made by its first entry.", inner);

    internal static BookException LogDamaged(string path, long lost) =>
        new(BookTrouble.Damaged, $"The log beside {path} is damaged: at least {(lost == 1 ? "one later write" : $"{lost} later writes")} in it cannot be read any more.",
            $"Keep copies of the book and of {path}-wal. Then restore the latest backup with --merge: closemown book restore BACKUP --merge. Without a backup, move the -wal file away: the book then opens as it was before the writes in it.");

    internal static BookException Empty(string path) =>
        new(BookTrouble.Missing, $"{path} is empty: no book was begun in it.", "Check the path; a book is made by its first entry.");

    internal static BookException NotABook(string path, Exception? inner = null) =>
        new(BookTrouble.NotABook, $"{path} is not a book of Closemown.", "Give the path of a book, or of a file that does not exist yet. The file was left as it is.", inner);

    private static BookException FromSqlite(SqliteException e, string path) => e.SqliteErrorCode switch
    {
        5 or 6 => new(BookTrouble.Locked, $"{path} is held by another program.", "Wait until it has finished, or close it, then try again.", e),
        8 => new(BookTrouble.ReadOnly, $"{path} cannot be written.", "Check the permissions of the file and its folder, or work on a copy.", e),
        11 => new(BookTrouble.Damaged, $"{path} is damaged ({e.Message}).", "Keep the file as it is, and go back to the latest backup.", e),
        13 => new(BookTrouble.DiskFull, $"There is no room to write {path}.", "Free some room on its disk, then verify the book and try again.", e),
        14 => new(BookTrouble.BadPlace, $"{path} cannot be opened.", "Check that its folder exists and may be written.", e),
        26 => NotABook(path, e),
        _ => new(BookTrouble.InputOutput, $"Reading or writing {path} failed ({e.Message}).", "Check the disk, then verify the book.", e),
    };
}
