using System.Globalization;
using Microsoft.Data.Sqlite;

namespace Closemown.Book;

/// <summary>A backup that was made.</summary>
/// <param name="Path">Where it lies.</param>
/// <param name="Verified">What the check of the copy found: nothing wrong.</param>
public sealed record BackupReport(string Path, VerificationReport Verified);

/// <summary>Copies a book, also while it is in use.</summary>
public static class Backup
{
    /// <summary>The name of a backup that was given none: the book's name and the date, in the book's folder.</summary>
    public static string DefaultName(string book, DateOnly date)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(book);
        var full = Path.GetFullPath(book);
        var name = $"{Path.GetFileNameWithoutExtension(full)}-{date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}{Path.GetExtension(full)}";
        return Path.Combine(Path.GetDirectoryName(full)!, name);
    }

    /// <summary>Makes a backup by the database's own backup call, verifies the copy, and only then gives it its name.</summary>
    /// <param name="book">The book's path.</param>
    /// <param name="target">Where to; a folder takes the default name in it; null is <see cref="DefaultName"/>.</param>
    /// <param name="date">Today, for the default name.</param>
    /// <exception cref="BookException">The target exists, the copy is not whole, or a file cannot be read or written.</exception>
    public static BackupReport Make(string book, string? target, DateOnly date)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(book);
        if (book == BookFile.InMemory) throw new BookException(BookTrouble.BadPlace, "A book in memory has no file to copy.", "Export its entries instead.");
        var usual = DefaultName(book, date);
        target = target is null ? usual : Path.GetFullPath(target);
        if (Directory.Exists(target)) target = Path.Combine(target, Path.GetFileName(usual));
        Refuse(target);
        var part = $"{target}.{Convert.ToHexStringLower(System.Security.Cryptography.RandomNumberGenerator.GetBytes(6))}.part";
        var named = false;
        try
        {
            if (Path.GetDirectoryName(target) is { Length: > 0 } folder) Directory.CreateDirectory(folder);
            Copy(BookFile.Real(book), part);
            var report = Verification.Run(part);
            if (!report.Ok) throw report.Problems[0].ToException();
            Disk.Flush(part);
            Refuse(target);
            File.Move(part, target, overwrite: false);
            named = true;
            Disk.FlushFolderOf(target);
            return new(target, report with { Path = target });
        }
        catch (Exception e) when (e is SqliteException or IOException or UnauthorizedAccessException)
        {
            if (!named && File.Exists(target)) Refuse(target);
            throw BookException.From(e, target);
        }
        finally
        {
            foreach (var left in new[] { part, part + "-wal", part + "-shm", part + "-journal" }) File.Delete(left);
        }
    }

    /// <summary>Copies a book into a new file that stands alone.</summary>
    internal static void Copy(string book, string part)
    {
        using var from = BookFile.Connect(book, new BookOptions { ReadOnly = true });
        using var to = BookFile.OpenRaw(part, SqliteOpenMode.ReadWriteCreate);
        from.BackupDatabase(to);
        BookFile.Run(to, "pragma journal_mode = delete");          // one file, readable where nothing can be written beside it
    }

    private static void Refuse(string target)
    {
        if (File.Exists(target) || Directory.Exists(target))
            throw new BookException(BookTrouble.Exists, $"{target} exists already; a backup overwrites nothing.", "Give another name, or move that file away.");
    }
}
