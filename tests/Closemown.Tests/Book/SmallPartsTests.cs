using Closemown.Book;
using Closemown.Entries;
using Closemown.Tests.Entries;
using Microsoft.Data.Sqlite;
using Xunit;

namespace Closemown.Tests.Book;

/// <summary>Small promises of the book that no longer test would miss.</summary>
public sealed class SmallPartsTests
{
    private static TempFolder Written(int entries)
    {
        var folder = new TempFolder();
        using var book = folder.Open();
        book.AppendAll(Lines.Clicks(entries), allOrNone: true);
        return folder;
    }

    /// <summary>Puts another text into an entry, past the guards.</summary>
    private static void Tamper(TempFolder folder, int seq) =>
        folder.Do($"drop trigger entry_no_update; update entry set json = replace(json, '\"kind\"', '\"kinds\"') where seq = {seq}");

    [Theory]
    [InlineData("pragma user_version = 5")]
    [InlineData("pragma application_id = 7")]
    [InlineData("create table t (x)")]
    public void A_database_with_any_mark_of_another_program_is_no_book_and_stays_as_it_is(string mark)
    {
        using var folder = new TempFolder();
        folder.Do(mark);
        var before = File.ReadAllBytes(folder.Book);
        Assert.Equal(BookTrouble.NotABook, Assert.Throws<BookException>(() => folder.Open().Dispose()).Trouble);
        Assert.Equal(before, File.ReadAllBytes(folder.Book));
    }

    [Theory]
    [InlineData(0x001)]
    [InlineData(0x100)]
    [InlineData(0xFFF)]
    public void Running_numbers_go_on_after_their_own_kind_of_id_only(int counter)
    {
        using var book = new MemoryBook();
        var line = Lines.Whole("""{"kind":"lap","minutes":2}""", 1).Replace(Lines.Id(1).ToString("D"), EntryIds.Make(Lines.Start, counter, 41).ToString("D"), StringComparison.Ordinal);
        book.Append(Lines.Read(line));
        Assert.Equal(EntryIds.Make(Lines.Start, 0, 1), SequentialIds.After(book).Next(Lines.Start));
        book.Append(Lines.Entry("""{"kind":"lap","minutes":3}""", 41));
        Assert.Equal(EntryIds.Make(Lines.Start, 0, 42), SequentialIds.After(book).Next(Lines.Start));
    }

    [Fact]
    public void An_import_of_all_or_none_takes_none_of_thousands_of_lines_when_the_last_is_bad()
    {
        using var book = new MemoryBook();
        var text = string.Join('\n', Lines.Clicks(3000).Select(e => e.Json).Append("nonsense"));
        var report = Importer.Read(new StringReader(text), book, new ImportOptions { AllOrNone = true });
        Assert.False(report.Ok);
        Assert.Equal(0, book.Count);
        Assert.Equal(3000, Importer.Read(new StringReader(text), book).Added);
    }

    [Fact]
    public void Of_many_bad_lines_a_hundred_are_named_and_all_are_counted()
    {
        using var book = new MemoryBook();
        var report = Importer.Read(new StringReader(string.Join('\n', Enumerable.Repeat("nonsense", 150))), book);
        Assert.Equal((100, 150L, 150L), (report.Faults.Count, report.FaultCount, report.Bad));
    }

    [Fact]
    public void A_line_without_an_end_is_refused_and_not_kept_in_memory()
    {
        using var book = new MemoryBook();
        using var endless = new StringReader(new string('x', 20_000_000));
        var before = GC.GetAllocatedBytesForCurrentThread();
        var report = Importer.Read(endless, book);
        Assert.True(GC.GetAllocatedBytesForCurrentThread() - before < 4_000_000);
        Assert.Equal((1L, 0L), (report.Bad, report.Added));
    }

    [Fact]
    public void Part_of_a_book_is_read_between_two_numbers() => OnBoth(5, book =>
    {
        Assert.Equal([1, 2], book.ReadBetween(0, 2).Select(s => s.Seq));
        Assert.Equal([2, 3], book.ReadBetween(1, 3).Select(s => s.Seq));
        Assert.Equal([5], book.ReadBetween(4, 99).Select(s => s.Seq));
        Assert.Empty(book.ReadBetween(3, 3));
        Assert.Equal([4, 5], book.ReadAfter(3).Select(s => s.Seq));
    });

    private static void OnBoth(int entries, Action<IEntryStore> test)
    {
        using var memory = new MemoryBook();
        memory.AppendAll(Lines.Clicks(entries), allOrNone: true);
        test(memory);
        using var folder = Written(entries);
        using var file = folder.Open();
        test(file);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(6)]
    public void What_is_sound_of_a_damaged_book_ends_before_the_damage_whoever_counts(int damaged)
    {
        using var folder = Written(6);
        Tamper(folder, damaged);
        using var book = folder.Open(new BookOptions { SoundPart = true });
        Assert.Equal(damaged - 1, book.ReadAll().Count);
        Assert.Equal(damaged - 1, book.Count);
        Assert.Equal(new BookStamp(damaged - 1, 0), book.Stamp);
        Assert.Equal(Math.Max(0, damaged - 2), book.ReadAfter(1).Count);
    }

    [Fact]
    public void Entries_and_weather_are_counted_apart()
    {
        using var folder = Written(3);
        using var book = folder.Open();
        Assert.Equal(new BookStamp(3, 0), book.Stamp);
        book.AppendAll([Lines.Forecast(80, 11), Lines.Entry("""{"kind":"weather","date":"2026-05-01","tMinC":4}""", 81)], allOrNone: true);
        Assert.Equal(new BookStamp(3, 2), book.Stamp);
    }

    [Fact]
    public void A_book_of_the_first_format_gets_what_the_second_has_with_the_first_writing()
    {
        using var folder = Written(2);
        using (var book = folder.Open()) book.Append(Lines.Entry("""{"kind":"weather","date":"2026-05-01","tMinC":4}""", 81));
        folder.Do("drop trigger weather_hash_first; drop trigger weather_hash_goes; drop table weather_hash; pragma user_version = 1");
        using (var old = folder.Open(new BookOptions { ReadOnly = true })) Assert.Equal(1, old.FormatVersion);
        using (var book = folder.Open()) Assert.Equal(BookFormat.Version, book.FormatVersion);
        Assert.Empty(Verification.Run(folder.Book).Problems);
    }

    [Fact]
    public void A_file_that_was_only_touched_is_still_the_same()
    {
        using var folder = Written(3);
        using var book = folder.Open();
        book.Append(Lines.Entry("""{"kind":"lap","minutes":2}""", 71));
        folder.Do("pragma wal_checkpoint(full)");
        for (var n = 0; n < 3; n++)
        {
            File.SetLastWriteTimeUtc(folder.Book, new DateTime(2026, 1, 1 + n, 0, 0, 0, DateTimeKind.Utc));
            Assert.Equal(AppendResult.Added, book.Append(Lines.Entry("""{"kind":"lap","minutes":2}""", 80 + n)));
        }
        Assert.Equal(7, book.Count);
    }

    [Fact]
    public void A_problem_of_the_file_names_no_row()
    {
        Assert.Equal("Gone. Go back.", new VerificationProblem("", 0, "Gone.", "Go back.").ToString());
        Assert.Equal("entry 3: Gone. Go back.", new VerificationProblem("entry", 3, "Gone.", "Go back.").ToString());
        Assert.Equal("Gone.", new VerificationProblem("", 0, "Gone.", "Go back.").ToException().Message);
        Assert.Equal("entry 3: Gone.", new VerificationProblem("entry", 3, "Gone.", "Go back.").ToException().Message);
        using var folder = Written(600);
        folder.Do("pragma journal_mode = delete");
        Spoil(folder.Book, Leaf(folder.Book, 300));
        var problems = Verification.Run(folder.Book).Problems;
        Assert.Contains(problems, p => p.Message.StartsWith("The file cannot be read to its end", StringComparison.Ordinal));
        Assert.All(problems.Where(p => p.Table.Length == 0), p => Assert.Equal(0, p.Row));
    }

    [Fact]
    public void What_lies_behind_a_spoilt_page_is_read_from_the_back_in_order()
    {
        using var folder = Written(600);
        folder.Do("pragma journal_mode = delete");
        Spoil(folder.Book, Leaf(folder.Book, 300));
        var read = Salvage.Read(folder.Book);
        Assert.False(read.Whole);
        var place = Lines.Clicks(600).Select((e, i) => (e.Id, i)).ToDictionary(p => p.Id, p => p.i);
        var numbers = read.Entries.Select(e => place[e.Id]).ToList();
        Assert.Equal(numbers.Order(), numbers);
        Assert.Contains(numbers, n => n < 200);
        Assert.Contains(numbers, n => n > 500);
        Assert.True(numbers.Count is > 300 and < 600, $"{numbers.Count}");
    }

    [Fact]
    public void Of_what_is_no_database_nothing_is_salvaged_and_nothing_counted()
    {
        using var folder = new TempFolder();
        File.WriteAllText(folder.Book, new string('x', 5000));
        var read = Salvage.Read(folder.Book);
        Assert.Equal((0, 0, 0L, false), (read.Entries.Count, read.Weather.Count, read.Untrusted, read.Whole));
    }

    [Fact]
    public void Weather_that_cannot_be_read_to_its_end_leaves_the_book_not_whole()
    {
        using var folder = Written(3);
        folder.Do("drop table weather_hash");
        Assert.False(Salvage.Read(folder.Book).Whole);
        Assert.Equal(3, Salvage.Read(folder.Book).Entries.Count);
    }

    [Fact]
    public void A_backup_that_is_not_whole_is_told_as_such_and_nothing_is_made_of_it()
    {
        using var folder = Written(4);
        Tamper(folder, 2);
        var target = folder.At("other.closemown");
        var told = Assert.Throws<BookException>(() => Restore.Make(folder.Book, target, new DateTime(2026, 5, 1), merge: false));
        Assert.Equal(BookTrouble.Damaged, told.Trouble);
        Assert.StartsWith("The backup ", told.Message, StringComparison.Ordinal);
        Assert.False(File.Exists(target));
    }

    [Fact]
    public void Where_there_is_no_log_none_of_it_is_lost()
    {
        using var folder = new TempFolder();
        Assert.Equal(0, LogCheck.Lost(folder.Book));
        Assert.Equal(0, LogCheck.Lost(folder.At("no such folder/book")));
        Assert.Null(LogCheck.LastEntry(folder.Book));
    }

    /// <summary>The page of the table of entries on which a number lies, by what the file itself says of its pages.</summary>
    private static int Leaf(string path, int seq)
    {
        var bytes = File.ReadAllBytes(path);
        var size = (bytes[16] << 8) | bytes[17];
        var sought = System.Text.Encoding.UTF8.GetBytes(Lines.Clicks(seq).Last().Json);
        var at = bytes.AsSpan().IndexOf(sought);
        Assert.True(at > 0);
        return at / size;
    }

    private static void Spoil(string path, int page)
    {
        SqliteConnection.ClearAllPools();
        var bytes = File.ReadAllBytes(path);
        var size = (bytes[16] << 8) | bytes[17];
        bytes.AsSpan(page * size, size).Fill(0xA5);
        File.WriteAllBytes(path, bytes);
    }
}
