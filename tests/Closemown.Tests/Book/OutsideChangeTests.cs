using Closemown.Book;
using Closemown.Tests.Entries;
using Xunit;

namespace Closemown.Tests.Book;

/// <summary>A book's file that is changed by something else while it is open.</summary>
public sealed class OutsideChangeTests
{
    /// <summary>A book of 20 entries, and an older copy of 5 beside it.</summary>
    private static (SqliteBook Book, string Older) Opened(TempFolder folder)
    {
        using (var begun = folder.Open()) begun.AppendAll(Lines.Clicks(5), allOrNone: true);
        var older = Backup.Make(folder.Book, folder.At("older.closemown"), DateOnly.MinValue).Path;
        using (var more = folder.Open()) more.AppendAll(Lines.Clicks(220)[5..], allOrNone: true);
        var book = folder.Open();
        Assert.Equal(220, book.ReadAll().Count);
        Assert.Equal(AppendResult.Added, book.Append(Lines.Clicks(221)[220]));
        return (book, older);
    }

    private static void Refused(SqliteBook book, string told)
    {
        for (var again = 0; again < 2; again++)
        {
            var e = Assert.Throws<BookException>(() => book.Append(Lines.Clicks(222)[221]));
            Assert.Equal(BookTrouble.ChangedOutside, e.Trouble);
            Assert.Contains(told, e.Message, StringComparison.Ordinal);
            Assert.Equal(BookTrouble.ChangedOutside, Assert.Throws<BookException>(() => book.Stamp).Trouble);
        }
    }

    [Fact]
    public void F3_A_book_replaced_by_an_older_copy_takes_nothing_more()
    {
        using var folder = new TempFolder();
        var (book, older) = Opened(folder);
        using (book)
        {
            File.Move(older, folder.Book, overwrite: true);
            Refused(book, "another file was put in its place");
        }
        // The log that is left there is the other file's: it is not played into this one.
        Assert.Equal(BookTrouble.ForeignLog, Assert.Throws<BookException>(() => folder.Open()).Trouble);
        File.Delete(folder.Book + "-wal");
        Assert.Equal(5, Verification.Run(folder.Book).Entries);
    }

    [Fact]
    public void F3_A_book_written_over_by_an_older_copy_takes_nothing_more()
    {
        using var folder = new TempFolder();
        var (book, older) = Opened(folder);
        using (book)
        {
            File.WriteAllBytes(folder.Book, File.ReadAllBytes(older));
            Refused(book, "an older copy was written over it: it holds 5 entries, and held 220");
        }
        Assert.Equal(BookTrouble.ForeignLog, Assert.Throws<BookException>(() => folder.Open()).Trouble);
    }

    [Fact]
    public void F3_A_book_written_over_by_another_book_takes_nothing_more()
    {
        using var folder = new TempFolder();
        using (var other = BookFile.Open(folder.At("other"))) other.AppendAll([.. Enumerable.Range(1, 300).Select(i => Lines.Entry("""{"kind":"mow","hours":1}""", i + 1000))], allOrNone: true);
        var (book, _) = Opened(folder);
        using (book)
        {
            File.WriteAllBytes(folder.Book, File.ReadAllBytes(folder.At("other")));
            Refused(book, "its entry 300 is not the book's");
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(40000)]
    public void F3_A_book_written_over_by_nonsense_takes_nothing_more(int length)
    {
        using var folder = new TempFolder();
        var (book, _) = Opened(folder);
        using (book)
        {
            File.WriteAllText(folder.Book, new string('n', length));
            Refused(book, "something that is no book was written over it");
        }
    }

    [Fact]
    public void F3_A_book_that_was_removed_takes_nothing_more_and_its_log_is_told_of()
    {
        using var folder = new TempFolder();
        var (book, _) = Opened(folder);
        using (book)
        {
            File.Move(folder.Book, folder.At("away"));
            Refused(book, "it was moved or removed");
            Assert.Equal(221, book.ReadAll().Count);       // what it held can still be exported
        }
        Assert.Equal(BookTrouble.ForeignLog, Assert.Throws<BookException>(() => folder.Open()).Trouble);
        Assert.False(File.Exists(folder.Book));
        File.Move(folder.At("away"), folder.Book);
        using var back = folder.Open();
        Assert.Equal(221, back.ReadAll().Count);
    }

    [Fact]
    public void F3_Other_programs_writing_and_checkpoints_are_no_change_from_outside()
    {
        using var folder = new TempFolder();
        using var book = folder.Open();
        var entries = Lines.Clicks(60);
        for (var i = 0; i < 60; i += 3)
        {
            book.Append(entries[i]);
            using (var other = folder.Open()) other.Append(entries[i + 1]);
            folder.Do("pragma wal_checkpoint(truncate)");
            _ = book.Stamp;
            book.Append(entries[i + 2]);
        }
        Assert.Equal(60, book.ReadAll().Count);
    }

    [Fact]
    public void F3_An_entry_seen_and_then_gone_is_noticed_inside_the_transaction()
    {
        using var folder = new TempFolder();
        using var book = folder.Open();
        book.AppendAll(Lines.Clicks(3), allOrNone: true);
        folder.Do("drop trigger entry_no_delete; delete from entry where seq = 3");
        var e = Assert.Throws<BookException>(() => book.Append(Lines.Clicks(4)[3]));
        Assert.Equal(BookTrouble.ChangedOutside, e.Trouble);
        Assert.Contains("entry 3, which this program has seen in it, is not in it any more", e.Message, StringComparison.Ordinal);
    }

    /// <summary>A closed book of 120 entries, and the log as it lay beside it at 40.</summary>
    private static byte[] LogAt40(TempFolder folder, string path)
    {
        byte[] log;
        using (var book = BookFile.Open(path))
        {
            foreach (var e in Lines.Clicks(40)) book.Append(e);
            log = File.ReadAllBytes(path + "-wal");
            book.AppendAll(Lines.Clicks(120)[40..], allOrNone: true);
        }
        Assert.False(File.Exists(path + "-wal"));
        _ = folder;
        return log;
    }

    [Fact]
    public void F7_An_older_log_is_refused_and_not_followed()
    {
        using var folder = new TempFolder();
        var log = LogAt40(folder, folder.Book);
        var file = File.ReadAllBytes(folder.Book);
        File.WriteAllBytes(folder.Book + "-wal", log);
        foreach (var open in (Action[])[() => folder.Open().Dispose(), () => folder.Open(new BookOptions { ReadOnly = true }).Dispose(), () => Verification.Run(folder.Book), () => Backup.Make(folder.Book, folder.At("b"), DateOnly.MinValue)])
        {
            var e = Assert.Throws<BookException>(open);
            Assert.Equal(BookTrouble.ForeignLog, e.Trouble);
            Assert.Contains("the file holds entry 120, and with the log the book would end at 40", e.Message, StringComparison.Ordinal);
            Assert.Equal(log, File.ReadAllBytes(folder.Book + "-wal"));
            Assert.Equal(file, File.ReadAllBytes(folder.Book));
        }
        Assert.Equal(120, Salvage.Read(folder.Book).Entries.Count);
        File.Delete(folder.Book + "-wal");
        Assert.Equal(120, Verification.Run(folder.Book).Entries);
    }

    [Fact]
    public void F7_Another_books_log_is_refused()
    {
        using var folder = new TempFolder();
        var log = LogAt40(folder, folder.At("other"));
        using (var book = folder.Open()) book.AppendAll([.. Enumerable.Range(1, 30).Select(i => Lines.Entry("""{"kind":"mow","hours":1}""", i + 1000))], allOrNone: true);
        File.WriteAllBytes(folder.Book + "-wal", log);
        Assert.Contains("entry 30 would be another", Assert.Throws<BookException>(() => folder.Open()).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void F7_A_restore_keeps_a_log_that_does_not_belong_and_does_not_follow_it()
    {
        using var folder = new TempFolder();
        var log = LogAt40(folder, folder.Book);
        var backup = Backup.Make(folder.Book, folder.At("b"), DateOnly.MinValue).Path;
        File.WriteAllBytes(folder.Book + "-wal", log);
        var report = Restore.Make(backup, folder.Book, new DateTime(2026, 5, 1), merge: false);
        Assert.Equal((120, 0), (report.Verified.Entries, report.Lacking));
        Assert.Equal(log, File.ReadAllBytes(report.Kept + "-wal"));
    }

    [Fact]
    public void F7_The_log_of_a_book_that_was_killed_or_is_open_still_works()
    {
        using var folder = new TempFolder();
        var (file, log) = (folder.At("cut"), folder.At("cut-wal"));
        using (var book = folder.Open())
        {
            var entries = Lines.Clicks(30);
            for (var i = 0; i < 30; i++)
            {
                book.Append(entries[i]);
                if (i == 14) folder.Do("pragma wal_checkpoint(passive)");
                File.Copy(folder.Book, file, overwrite: true);
                File.Copy(folder.Book + "-wal", log, overwrite: true);
                File.Delete(file + "-shm");
                using var cut = BookFile.Open(file, new BookOptions { ReadOnly = true });
                Assert.Equal(i + 1, cut.ReadAll().Count);
                using var beside = folder.Open(new BookOptions { ReadOnly = true });
                Assert.Equal(i + 1, beside.Count);
            }
        }
    }
}
