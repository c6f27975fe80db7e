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

    /// <summary>The file was changed from outside while it was open: moved, replaced, removed, or written over.</summary>
    ChangedOutside,

    /// <summary>The log beside the file is not this file's.</summary>
    ForeignLog,
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

    /// <summary>What reading a damaged file throws, besides what this class says itself.</summary>
    /// <remarks>A disposed object's exception is an invalid operation too, and no damage.</remarks>
    internal static bool IsDamage(Exception e) =>
        e is InvalidCastException or FormatException or OverflowException or InvalidOperationException and not ObjectDisposedException;

    /// <summary>Whether something went wrong with the file, rather than with this program.</summary>
    internal static bool IsUnreadable(Exception e) => e is SqliteException or IOException or UnauthorizedAccessException or BookException || IsDamage(e);

    internal static BookException From(Exception e, string path) => e switch
    {
        BookException b => b,
        _ when IsDamage(e) => new(BookTrouble.Damaged, $"{path} is damaged: a row holds what no book writes ({e.Message.TrimEnd('.')}).", BookDamage.GoBack, e),
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

    internal static BookException ForeignLog(string path, string why) =>
        new(BookTrouble.ForeignLog, $"The log {path}-wal is not that of {path}: {why}. Nothing was read or changed.",
            $"One of the two was copied or put back by itself. Keep copies of both. Where {path} is the right file, move {path}-wal away; where the log is the newer, put the file back that it lay beside, or bring back a backup: closemown book restore BACKUP --merge.");

    internal static BookException LogAlone(string path) =>
        new(BookTrouble.ForeignLog, $"There is no book at {path}, but its log {path}-wal lies there: the file was moved or removed while it was in use.",
            $"Put the file back beside its log; it then holds what the log holds. To begin another book here, or to restore one, move {path}-wal away first.");

    internal static BookException ChangedOutside(string path, string what) =>
        new(BookTrouble.ChangedOutside, $"{path} was changed from outside while this program had it open: {what}. Nothing more is taken.",
            "End this program. See that the right file lies there: closemown book verify; closemown book restore BACKUP brings a copy back. Then start it again, and enter this once more.");

    internal static BookException Link(string path, string what) =>
        new(BookTrouble.BadPlace, $"{path} is a link {what}.", "Mend the link, or give the path of the book itself.");

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
