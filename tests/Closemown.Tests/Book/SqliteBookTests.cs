using System.Collections.Concurrent;
using Closemown.Book;
using Closemown.Entries;
using Closemown.Tests.Entries;
using Microsoft.Data.Sqlite;
using Xunit;

namespace Closemown.Tests.Book;

/// <summary>What a book in a file does beyond any book.</summary>
public sealed class SqliteBookTests
{
    private static BookException Throws(BookTrouble trouble, Action act)
    {
        var e = Assert.Throws<BookException>(act);
        Assert.Equal(trouble, e.Trouble);
        Assert.NotEmpty(e.Message);
        Assert.NotEmpty(e.Remedy);
        return e;
    }

    [Fact]
    public void Entries_are_there_after_closing_and_opening()
    {
        using var folder = new TempFolder();
        var entries = Lines.Clicks(20);
        string head;
        using (var book = folder.Open())
        {
            Assert.Equal(folder.Book, book.Where);
            foreach (var e in entries) book.Append(e);
            book.Append(Lines.Forecast(50, 12));
            head = book.HashAt(20);
        }
        using var again = folder.Open();
        Assert.Equal(entries.Select(e => e.Json), again.ReadAll().Select(s => s.Entry.Json));
        Assert.Equal(head, again.HashAt(20));
        Assert.Single(again.ReadWeather());
        Assert.Equal(AppendResult.AlreadyThere, again.Append(entries[3]));
    }

    [Fact]
    public void The_folder_is_made_and_a_missing_book_is_not_made_for_reading()
    {
        using var folder = new TempFolder();
        var path = folder.At(Path.Combine("a", "b", "c.closemown"));
        Throws(BookTrouble.Missing, () => BookFile.Open(path, new BookOptions { ReadOnly = true }));
        Throws(BookTrouble.Missing, () => BookFile.Open(path, new BookOptions { Create = false }));
        Throws(BookTrouble.Missing, () => Verification.Run(path));
        Assert.False(Directory.Exists(folder.At("a")));
        using var book = BookFile.Open(path);
        Assert.True(File.Exists(path));
    }

    [Fact]
    public void The_file_is_marked_strict_and_safe()
    {
        using var folder = new TempFolder();
        using var book = folder.Open();
        Assert.Equal(2, book.FormatVersion);
        Assert.Equal(("wal", 2L), book.Reading(c => ((string)BookFile.Scalar(c, "pragma journal_mode")!, BookFile.Number(c, "pragma synchronous"))));
        Assert.Equal(0x434C4D4E, book.Reading(c => BookFile.Number(c, "pragma application_id")));
        Assert.Equal(0, book.Reading(c => BookFile.Number(c, "select count(*) from pragma_table_list where type = 'table' and name in ('entry', 'weather', 'weather_hash') and strict = 0")));
        Assert.True(Version.Parse(book.Reading(c => (string)BookFile.Scalar(c, "select sqlite_version()")!)) >= new Version(3, 51, 3));
    }

    [Theory]
    [InlineData("3.51.2")]
    [InlineData("3.46.1")]
    [InlineData("nonsense")]
    public void A_faulty_sqlite_is_refused(string version)
    {
        Throws(BookTrouble.UnsafeSqlite, () => BookFile.CheckSqlite(version));
        BookFile.CheckSqlite("3.51.3");
        BookFile.CheckSqlite("3.53.0");
    }

    [Theory]
    [InlineData("update entry set json = 'x' where seq = 2", "never changed")]
    [InlineData("update entry set seq = 9 where seq = 3", "never changed")]
    [InlineData("delete from entry where seq = 3", "never deleted")]
    [InlineData("delete from entry", "never deleted")]
    [InlineData("insert or replace into entry select seq, 'other', 'x', 'x' from entry where seq = 2", "never replaced")]
    [InlineData("replace into entry select 4, id, 'x', 'x' from entry where seq = 2", "never replaced")]
    [InlineData("insert or ignore into entry select seq, id, 'x', 'x' from entry where seq = 2", "never replaced")]
    [InlineData("insert into entry values (2, 'other', 'x', 'x') on conflict do update set json = 'x'", "never replaced")]
    [InlineData("insert into entry values (9, 'other', 'x', 'x')", "numbered in turn")]
    [InlineData("insert into entry values (0, 'other', 'x', 'x')", "numbered in turn")]
    [InlineData("update weather set json = 'x'", "never changed")]
    [InlineData("delete from weather where forecast = 0", "never deleted")]
    [InlineData("insert into weather (seq, id, area, date, source, forecast, json) values (2, 'x', '', '', '', 0, '{}')", "needs its hash")]
    [InlineData("update weather_hash set hash = 'x'", "never changed")]
    [InlineData("delete from weather_hash", "never changed")]
    [InlineData("replace into weather_hash select id, 'x' from weather_hash", "never replaced")]
    [InlineData("insert or replace into weather select seq, id, area, date, source, 1, json from weather where forecast = 0", "never replaced")]
    public void No_program_can_change_what_is_written(string sql, string told)
    {
        using var folder = new TempFolder();
        using (var book = folder.Open())
        {
            book.AppendAll(Lines.Clicks(3), allOrNone: true);
            book.Append(Lines.Entry("""{"kind":"weather","date":"2026-05-01"}""", 8));
        }
        var e = Assert.Throws<SqliteException>(() => folder.Do(sql));
        Assert.Contains(told, e.Message, StringComparison.Ordinal);
        var report = Verification.Run(folder.Book);
        Assert.True(report.Ok);
        Assert.Equal((3, 1), (report.Entries, report.Weather));
    }

    [Fact]
    public void Two_programs_append_to_one_file_in_turn()
    {
        using var folder = new TempFolder();
        using var one = folder.Open();
        using var two = folder.Open();
        var entries = Lines.Clicks(20);
        for (var i = 0; i < 20; i++) (i % 2 == 0 ? one : two).Append(entries[i]);
        Assert.Equal(AppendResult.AlreadyThere, one.Append(entries[19]));
        Assert.Equal(20, one.Count);
        Assert.Equal(one.ReadAll().Select(s => s.Hash), two.ReadAll().Select(s => s.Hash));
        Assert.True(Verification.Run(folder.Book).Ok);
    }

    [Fact]
    public void Two_programs_append_to_one_new_file_at_the_same_time()
    {
        using var folder = new TempFolder();
        var entries = Lines.Clicks(60);
        Parallel.For(0, 3, k =>
        {
            using var book = folder.Open();
            for (var i = k * 20; i < (k + 1) * 20; i++) Assert.Equal(AppendResult.Added, book.Append(entries[i]));
        });
        var report = Verification.Run(folder.Book);
        Assert.True(report.Ok);
        Assert.Equal(60, report.Entries);
    }

    /// <summary>A program that looks at the file while another one is just making it must see all of a book or nothing.</summary>
    [Fact]
    public void Many_programs_begin_new_books_at_the_same_moment()
    {
        using var folder = new TempFolder();
        const int Programs = 4, Rounds = 80;
        for (var round = 0; round < Rounds; round++)
        {
            var path = folder.At($"book-{round}.closemown");
            using var start = new Barrier(Programs);
            var told = new ConcurrentQueue<string>();
            var programs = Enumerable.Range(0, Programs).Select(_ => new Thread(() =>
            {
                start.SignalAndWait();
                try
                {
                    using var book = BookFile.Open(path);
                }
                catch (BookException e)
                {
                    told.Enqueue($"round {round}: {e.Message}");
                }
            })).ToArray();
            foreach (var p in programs) p.Start();
            foreach (var p in programs) p.Join();
            Assert.Empty(told);
        }
    }

    [Fact]
    public void A_book_that_another_program_holds_says_so_and_goes_on_afterwards()
    {
        using var folder = new TempFolder();
        using var book = folder.Open(new BookOptions { WaitSeconds = 1 });
        book.Append(Lines.Clicks(1)[0]);
        using (var raw = folder.Raw())
        {
            TempFolder.Do(raw, "begin immediate");
            Throws(BookTrouble.Locked, () => book.Append(Lines.Clicks(2)[1]));
            Assert.Single(book.ReadAll());
            TempFolder.Do(raw, "rollback");
        }
        Assert.Equal(AppendResult.Added, book.Append(Lines.Clicks(2)[1]));
    }

    [Fact]
    public void A_book_opened_for_reading_is_not_written()
    {
        using var folder = new TempFolder();
        using (var book = folder.Open()) book.Append(Lines.Clicks(1)[0]);
        using var reading = folder.Open(new BookOptions { ReadOnly = true });
        Assert.Single(reading.ReadAll());
        Throws(BookTrouble.ReadOnly, () => reading.Append(Lines.Clicks(2)[1]));
    }

    [Fact]
    public void What_is_not_a_book_is_refused_and_left_as_it_is()
    {
        using var folder = new TempFolder();
        File.WriteAllText(folder.At("notes.txt"), new string('n', 5000));
        File.WriteAllText(folder.At("short.txt"), "n");
        using (var raw = folder.Raw(folder.At("other.db"))) TempFolder.Do(raw, "create table t (x); insert into t values (1)");
        foreach (var name in new[] { "notes.txt", "short.txt", "other.db" })
        {
            var before = File.ReadAllBytes(folder.At(name));
            Throws(BookTrouble.NotABook, () => BookFile.Open(folder.At(name)));
            Throws(BookTrouble.NotABook, () => Verification.Run(folder.At(name)));
            Assert.Equal(before, File.ReadAllBytes(folder.At(name)));
        }
        Throws(BookTrouble.BadPlace, () => BookFile.Open(folder.Path));
        File.WriteAllText(folder.At("empty"), "");
        using var book = BookFile.Open(folder.At("empty"));
        Assert.Equal(0, book.Count);
    }

    [Fact]
    public void A_newer_format_is_refused_and_left_as_it_is()
    {
        using var folder = new TempFolder();
        using (folder.Open())
        {
        }
        folder.Do("pragma user_version = 3");
        var before = File.ReadAllBytes(folder.Book);
        var e = Throws(BookTrouble.NewerFormat, () => folder.Open());
        Assert.Contains("version 3; this program knows up to 2", e.Message, StringComparison.Ordinal);
        Throws(BookTrouble.NewerFormat, () => Verification.Run(folder.Book));
        Assert.Equal(before, File.ReadAllBytes(folder.Book));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_failed_write_is_final_until_the_book_has_been_verified(bool sqlite)
    {
        using var folder = new TempFolder();
        using var book = folder.Open();
        var entries = Lines.Clicks(4);
        book.Append(entries[0]);
        book.BeforeCommit = () => throw (sqlite ? new SqliteException("disk I/O error", 10) : new IOException("the disk is gone"));
        Throws(BookTrouble.InputOutput, () => book.Append(entries[1]));
        book.BeforeCommit = null;
        Throws(BookTrouble.Stopped, () => book.Append(entries[1]));
        Throws(BookTrouble.Stopped, () => book.AppendAll([entries[2]], allOrNone: true));
        Assert.Single(book.ReadAll());
        Assert.True(book.Reverify().Ok);
        Assert.Equal(AppendResult.Added, book.Append(entries[1]));
        Assert.Equal(2, Verification.Run(folder.Book).Entries);
    }

    [Fact]
    public void A_full_disk_is_told_as_such_and_is_final_too()
    {
        using var folder = new TempFolder();
        using var book = folder.Open();
        // SQLite reports its own page limit in the very way it reports a full disk.
        book.Reading(c => BookFile.Number(c, "pragma max_page_count = 20"));
        var big = Enumerable.Range(1, 40).Select(i => Lines.Entry($$"""{"kind":"locked","note":"{{new string('n', 9000)}}"}""", i)).ToArray();
        Throws(BookTrouble.DiskFull, () => book.AppendAll(big, allOrNone: false));
        Throws(BookTrouble.Stopped, () => book.Append(big[0]));
        book.Reverify();
        Assert.Equal(0, book.Count);
        Assert.All(book.AppendAll(big, allOrNone: false), r => Assert.Equal(AppendResult.Added, r));
    }

    [Fact]
    public void A_book_that_is_found_damaged_stays_closed_to_writing()
    {
        using var folder = new TempFolder();
        using var book = folder.Open();
        book.AppendAll(Lines.Clicks(3), allOrNone: true);
        book.BeforeCommit = () => throw new SqliteException("disk I/O error", 10);
        Throws(BookTrouble.InputOutput, () => book.Append(Lines.Clicks(4)[3]));
        book.BeforeCommit = null;
        folder.Do("drop trigger entry_no_update; update entry set json = replace(json, 'turn 2', 'turn 7') where seq = 2");
        Throws(BookTrouble.Damaged, () => book.Reverify());
        Throws(BookTrouble.Stopped, () => book.Append(Lines.Clicks(4)[3]));
    }

    [Fact]
    public void A_closed_book_is_closed()
    {
        using var folder = new TempFolder();
        var book = folder.Open();
        book.Dispose();
        Assert.Throws<ObjectDisposedException>(() => book.ReadAll());
        Assert.Throws<ObjectDisposedException>(() => book.Append(Lines.Clicks(1)[0]));
        Assert.False(File.Exists(folder.Book + "-wal"));
    }

    [Fact]
    public void What_is_kept_is_read_even_if_it_would_be_asked_about_today()
    {
        var line = Lines.Whole("""{"kind":"unit","clickUm":1999}""", 1);
        Assert.Empty(EntryReader.Read(line, EntryContext.Stored, out var entry));
        Assert.Equal(1999, entry![UnitEntry.ClickUm]);
        Assert.Empty(EntryReader.Read(Lines.Whole("""{"kind":"unit","clickUm":2001}""", 1), EntryContext.Stored, out _));      // nor is it shut out by a limit drawn later
        Assert.NotEmpty(EntryReader.Read(Lines.Whole("""{"kind":"unit","clickUm":2001}""", 1), EntryContext.Whole, out _));
        Assert.NotEmpty(EntryReader.Read(Lines.Whole("""{"kind":"unit","clickUm":"much"}""", 1), EntryContext.Stored, out _));
    }
}
