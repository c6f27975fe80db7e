using System.Globalization;
using Closemown.Entries;
using Microsoft.Data.Sqlite;

namespace Closemown.Book;

/// <summary>A book that was brought back.</summary>
/// <param name="Path">Where it lies.</param>
/// <param name="Verified">What the check of it found: nothing wrong.</param>
/// <param name="Kept">Where the book lies that was there before; null where there was none.</param>
/// <param name="Lacking">Entries and weather of the book before that the backup lacks.</param>
/// <param name="Merged">How many of them were brought in.</param>
/// <param name="Conflicts">Entries of the book before that the backup holds with other content; the backup's stay.</param>
/// <param name="Untrusted">Rows of the book before that are not what was written.</param>
/// <param name="ReadWhole">Whether all rows of the book before could be reached.</param>
public sealed record RestoreReport(string Path, VerificationReport Verified, string? Kept, long Lacking, long Merged, long Conflicts, long Untrusted, bool ReadWhole);

/// <summary>Brings a backup back as the book.</summary>
public static class Restore
{
    /// <summary>Verifies the backup, keeps the present book beside it, and puts a verified copy of the backup in its place by one rename.</summary>
    /// <param name="backup">The backup; it stays as it is.</param>
    /// <param name="book">Where the book belongs.</param>
    /// <param name="now">The time, for the name under which the present book is kept.</param>
    /// <param name="merge">Whether what the present book holds beyond the backup is brought in.</param>
    /// <exception cref="BookException">The backup is not whole, another program holds the book, or a file cannot be read or written; the present book is then still in place.</exception>
    public static RestoreReport Make(string backup, string book, DateTime now, bool merge)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(backup);
        ArgumentException.ThrowIfNullOrWhiteSpace(book);
        if (book == BookFile.InMemory) throw new BookException(BookTrouble.BadPlace, "A book in memory has no file to restore.", "Say where with --to PATH.");
        (backup, book) = (BookFile.Real(backup), BookFile.Real(book));
        if (backup == book) throw new BookException(BookTrouble.BadPlace, $"{book} is the book itself.", "Give the path of a backup of it, or another place with --to PATH.");
        if (Directory.Exists(book)) throw new BookException(BookTrouble.BadPlace, $"{book} is a folder.", "Give the path of the book's file in it.");
        Check(backup, $"The backup {backup} is not whole", "Try an older backup. Nothing was changed.");
        var part = $"{book}.{Convert.ToHexStringLower(System.Security.Cryptography.RandomNumberGenerator.GetBytes(6))}.part";
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(book)!);
            Backup.Copy(backup, part);
            string? kept = null;
            var before = new Salvaged([], [], 0, true);
            var settled = false;
            if (File.Exists(book))
            {
                settled = Settle(book);
                before = Salvage.Read(book);
            }
            var (lacking, conflicts) = Beyond(part, before);
            var merged = merge && lacking.Count > 0 ? Merge(part, lacking) : 0;
            var report = Check(part, "The copy of the backup is not whole", "Check the disk. Nothing was changed.");
            Disk.Flush(part);
            if (File.Exists(book) || File.Exists(book + "-wal")) kept = Keep(book, part, now);
            if (settled && File.Exists(book + "-wal"))
            {
                File.Delete(kept!);
                throw Held(book);                  // somebody opened it just now
            }
            RemoveBeside(book);
            File.Move(part, book, overwrite: true);
            Disk.FlushFolderOf(book);
            return new(book, report with { Path = book }, kept, lacking.Count, merged, conflicts, before.Untrusted, before.Whole);
        }
        catch (Exception e) when (e is SqliteException or IOException or UnauthorizedAccessException)
        {
            throw BookException.From(e, book);
        }
        finally
        {
            foreach (var left in new[] { part, part + "-wal", part + "-shm", part + "-journal" }) File.Delete(left);
        }
    }

    private static VerificationReport Check(string path, string what, string remedy)
    {
        var report = Verification.Run(path);
        return report.Ok ? report : throw new BookException(BookTrouble.Damaged, $"{what}: {report.Problems[0].Message}", remedy);
    }

    /// <summary>Writes the log into the file and ends it, which succeeds only where no other program has the book open; false where it is damaged or not the file's, and left as it is.</summary>
    private static bool Settle(string book)
    {
        if (LogCheck.Lost(book) > 0) return false;
        try
        {
            using var connection = BookFile.OpenRaw(book, SqliteOpenMode.ReadWrite, waitSeconds: 2);
            if (BookFile.Number(connection, "pragma application_id") != BookFormat.ApplicationId) return false;
            if (BookFile.ForeignLog(connection, book) is not null) return false;
            if ((string?)BookFile.Scalar(connection, "pragma journal_mode = delete") != "delete") throw Held(book);
            return true;
        }
        catch (SqliteException e) when (e.SqliteErrorCode is 5 or 6)
        {
            throw Held(book, e);
        }
        catch (Exception e) when (e is not BookException && BookException.IsUnreadable(e))
        {
            return false;                          // damaged, or no database at all: kept byte for byte
        }
    }

    private static BookException Held(string book, Exception? inner = null) =>
        new(BookTrouble.Locked, $"{book} is held by another program.", "Close every program that has the book open, then restore again. Nothing was changed.", inner);

    private static (List<Entry> Lacking, long Conflicts) Beyond(string part, Salvaged before)
    {
        using var restored = BookFile.Open(part, new BookOptions { ReadOnly = true });
        var held = restored.ReadAll().Select(s => s.Entry).Concat(restored.ReadWeatherKept()).ToDictionary(e => e.Id, e => e.Json);
        var conflicts = before.All.LongCount(e => held.TryGetValue(e.Id, out var json) && json != e.Json);
        return (before.All.Where(e => !held.ContainsKey(e.Id)).ToList(), conflicts);
    }

    private static long Merge(string part, List<Entry> lacking)
    {
        using (var restored = BookFile.Open(part, new BookOptions { Create = false }))
        {
            var results = restored.AppendAll(lacking, allOrNone: false);
            lacking = [.. lacking.Where((_, i) => results[i] == AppendResult.Added)];
        }
        using var connection = BookFile.OpenRaw(part, SqliteOpenMode.ReadWrite);
        BookFile.Run(connection, "pragma journal_mode = delete");           // the file alone is given its name
        return lacking.Count;
    }

    /// <summary>Copies the present book, with what lies beside it, under a dated name; there is a book in its place all the while.</summary>
    private static string Keep(string book, string part, DateTime now)
    {
        var stem = Path.Combine(Path.GetDirectoryName(book)!, $"{Path.GetFileNameWithoutExtension(book)}-before-restore-{now.ToString("yyyy-MM-dd-HHmmss", CultureInfo.InvariantCulture)}");
        var kept = stem + Path.GetExtension(book);
        for (var n = 2; File.Exists(kept); n++) kept = $"{stem}-{n}{Path.GetExtension(book)}";
        foreach (var beside in new[] { "-wal", "-journal", "" })        // the file last: where it is, all of it is
        {
            if (!File.Exists(book + beside)) continue;
            var copy = $"{part}-kept";
            try
            {
                File.Copy(book + beside, copy, overwrite: true);
                Disk.Flush(copy);
                File.Move(copy, kept + beside, overwrite: false);
            }
            finally
            {
                File.Delete(copy);
            }
        }
        Disk.FlushFolderOf(kept);
        return kept;
    }

    /// <summary>A log left beside would be played into the book that takes the place of its own.</summary>
    private static void RemoveBeside(string book)
    {
        foreach (var beside in new[] { "-wal", "-shm", "-journal" }) File.Delete(book + beside);
        Disk.FlushFolderOf(book);
    }
}
