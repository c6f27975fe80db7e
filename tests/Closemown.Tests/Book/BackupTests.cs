using Closemown.Book;
using Closemown.Tests.Entries;
using Xunit;

namespace Closemown.Tests.Book;

public sealed class BackupTests
{
    private static readonly DateOnly Day = new(2026, 5, 3);

    [Fact]
    public void A_backup_is_a_whole_book_made_while_the_book_is_open()
    {
        using var folder = new TempFolder();
        using var book = folder.Open();
        book.AppendAll(Lines.Clicks(50), allOrNone: true);
        book.Append(Lines.Forecast(90, 12));
        var report = Backup.Make(folder.Book, null, Day);
        Assert.Equal(folder.At("book-2026-05-03.closemown"), report.Path);
        Assert.True(report.Verified.Ok);
        Assert.Equal((50L, 1L, book.HashAt(50)), (report.Verified.Entries, report.Verified.Weather, report.Verified.Head));
        using var copy = BookFile.Open(report.Path);
        Assert.Equal(book.ReadAll().Select(s => (s.Seq, s.Entry.Json, s.Hash)), copy.ReadAll().Select(s => (s.Seq, s.Entry.Json, s.Hash)));
        Assert.Equal(AppendResult.Added, copy.Append(Lines.Clicks(51)[50]));
        Assert.Equal(50, book.Count);
    }

    [Fact]
    public void A_backup_overwrites_nothing_and_leaves_nothing_behind()
    {
        using var folder = new TempFolder();
        using (var book = folder.Open()) book.AppendAll(Lines.Clicks(5), allOrNone: true);
        File.WriteAllText(folder.At("mine.txt"), "mine");
        foreach (var target in new[] { folder.At("mine.txt"), folder.Book })
        {
            var e = Assert.Throws<BookException>(() => Backup.Make(folder.Book, target, Day));
            Assert.Equal(BookTrouble.Exists, e.Trouble);
        }
        Assert.Equal("mine", File.ReadAllText(folder.At("mine.txt")));
        Backup.Make(folder.Book, null, Day);
        Assert.Equal(BookTrouble.Exists, Assert.Throws<BookException>(() => Backup.Make(folder.Book, null, Day)).Trouble);
        Assert.Equal(["book-2026-05-03.closemown", "book.closemown", "mine.txt"], Directory.GetFiles(folder.Path).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_folder_as_target_takes_the_usual_name()
    {
        using var folder = new TempFolder();
        using (folder.Open())
        {
        }
        Directory.CreateDirectory(folder.At("safe"));
        Assert.Equal(folder.At(Path.Combine("safe", "book-2026-05-03.closemown")), Backup.Make(folder.Book, folder.At("safe"), Day).Path);
    }

    [Fact]
    public void A_damaged_book_gives_no_backup()
    {
        using var folder = new TempFolder();
        using (var book = folder.Open()) book.AppendAll(Lines.Clicks(5), allOrNone: true);
        folder.Do("drop trigger entry_no_update; update entry set json = replace(json, 'turn 2', 'turn 7') where seq = 2");
        Assert.Equal(BookTrouble.Damaged, Assert.Throws<BookException>(() => Backup.Make(folder.Book, null, Day)).Trouble);
        Assert.Equal(["book.closemown"], Directory.GetFiles(folder.Path).Select(Path.GetFileName));
    }

    [Fact]
    public void What_cannot_be_backed_up_says_why()
    {
        using var folder = new TempFolder();
        Assert.Equal(BookTrouble.Missing, Assert.Throws<BookException>(() => Backup.Make(folder.Book, null, Day)).Trouble);
        Assert.Equal(BookTrouble.BadPlace, Assert.Throws<BookException>(() => Backup.Make(":memory:", folder.Book, Day)).Trouble);
        Assert.Empty(Directory.GetFiles(folder.Path));
    }
}
