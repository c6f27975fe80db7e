using Closemown.Book;
using Closemown.Tests.Entries;
using Xunit;

namespace Closemown.Tests.Book;

public sealed class RestoreTests
{
    private static readonly DateTime Now = new(2026, 5, 4, 10, 20, 30);

    private const string KeptName = "book-before-restore-2026-05-04-102030.closemown";

    /// <summary>A book of ten entries and a day's weather, and a backup of it when it had six.</summary>
    private static (TempFolder Folder, string Backup) Kept()
    {
        var folder = new TempFolder();
        using var book = folder.Open();
        book.AppendAll(Lines.Clicks(6), allOrNone: true);
        var backup = Backup.Make(folder.Book, folder.At("backup.closemown"), new(2026, 5, 3)).Path;
        book.AppendAll(Lines.Clicks(10)[6..], allOrNone: true);
        book.Append(Lines.Entry("""{"kind":"weather","date":"2026-05-01","tMaxC":14}""", 90));
        return (folder, backup);
    }

    private static IEnumerable<string> Read(string path)
    {
        using var book = BookFile.Open(path, new BookOptions { ReadOnly = true });
        return [.. book.ReadAll().Select(s => s.Entry.Json), .. book.ReadWeatherKept().Select(e => e.Json)];
    }

    private static string[] Names(TempFolder folder) => [.. Directory.GetFiles(folder.Path).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)];

    [Fact]
    public void The_present_book_is_kept_and_what_the_backup_lacks_is_counted()
    {
        var (folder, backup) = Kept();
        using (folder)
        {
            var before = Read(folder.Book).ToList();
            var report = Restore.Make(backup, folder.Book, Now, merge: false);
            Assert.Equal((folder.Book, folder.At(KeptName), 5L, 0L, 0L), (report.Path, report.Kept, report.Lacking, report.Merged, report.Conflicts));
            Assert.Equal((6L, 0L, true), (report.Verified.Entries, report.Untrusted, report.ReadWhole));
            Assert.Equal(Lines.Clicks(6).Select(e => e.Json), Read(folder.Book));
            Assert.Equal(before, Read(folder.At(KeptName)));
            Assert.Equal(["backup.closemown", KeptName, "book.closemown"], Names(folder));
            using var book = folder.Open();
            Assert.Equal(AppendResult.Added, book.Append(Lines.Clicks(11)[10]));
        }
    }

    [Fact]
    public void Merging_brings_in_what_the_backup_lacks()
    {
        var (folder, backup) = Kept();
        using (folder)
        {
            var before = Read(folder.Book).ToList();
            var report = Restore.Make(backup, folder.Book, Now, merge: true);
            Assert.Equal((5L, 5L), (report.Lacking, report.Merged));
            Assert.Equal(before, Read(folder.Book));
            Assert.True(Verification.Run(folder.Book).Ok);
            Assert.Equal(["backup.closemown", KeptName, "book.closemown"], Names(folder));
            Restore.Make(backup, folder.Book, Now, merge: true);             // in the same second
            Assert.Contains("book-before-restore-2026-05-04-102030-2.closemown", Names(folder));
        }
    }

    [Fact]
    public void A_damaged_book_is_replaced_and_what_can_be_trusted_of_it_is_merged()
    {
        var (folder, backup) = Kept();
        using (folder)
        {
            var bytes = File.ReadAllBytes(folder.Book);
            var at = bytes.AsSpan().IndexOf("turn 8"u8);
            bytes[at + 5] = (byte)'9';
            File.WriteAllBytes(folder.Book, bytes);
            var report = Restore.Make(backup, folder.Book, Now, merge: true);
            // Entry 8 is changed; the others' links, each made from the hash before it, still fit.
            Assert.Equal((1L, 4L, 4L), (report.Untrusted, report.Lacking, report.Merged));
            Assert.Equal(Lines.Clicks(10).Where((_, i) => i != 7).Select(e => e.Json), Read(folder.Book).SkipLast(1));
            Assert.Equal(bytes[100..], File.ReadAllBytes(report.Kept!)[100..]);          // past the header, which says that the log was ended
        }
    }

    [Fact]
    public void A_damaged_log_is_kept_with_the_book_and_merged_as_far_as_it_goes()
    {
        using var folder = new TempFolder();
        var cut = folder.At("cut.closemown");
        string backup;
        using (var book = folder.Open())
        {
            backup = Backup.Make(folder.Book, folder.At("backup.closemown"), new(2026, 5, 3)).Path;
            foreach (var e in Lines.Clicks(12)) book.Append(e);
            File.Copy(folder.Book, cut);
            File.Copy(folder.Book + "-wal", cut + "-wal");
        }
        var log = File.ReadAllBytes(cut + "-wal");
        log[log.AsSpan().IndexOf("turn 6"u8) + 5] = (byte)'7';
        File.WriteAllBytes(cut + "-wal", log);
        Assert.Equal(BookTrouble.Damaged, Assert.Throws<BookException>(() => BookFile.Open(cut)).Trouble);
        var report = Restore.Make(backup, cut, Now, merge: true);
        Assert.Equal((5L, 5L), (report.Lacking, report.Merged));
        Assert.Equal(Lines.Clicks(5).Select(e => e.Json), Read(cut));
        Assert.Equal(log, File.ReadAllBytes(report.Kept + "-wal"));
        Assert.False(File.Exists(cut + "-wal"));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(300)]
    [InlineData(9000)]
    public void What_is_no_book_any_more_is_kept_byte_for_byte(int length)
    {
        var (folder, backup) = Kept();
        using (folder)
        {
            var rubbish = new byte[length];
            new Random(1).NextBytes(rubbish);
            File.WriteAllBytes(folder.Book, rubbish);
            var report = Restore.Make(backup, folder.Book, Now, merge: true);
            Assert.Equal(rubbish, File.ReadAllBytes(report.Kept!));
            Assert.Equal((0L, length == 0), (report.Lacking, report.ReadWhole));
            Assert.Equal(Lines.Clicks(6).Select(e => e.Json), Read(folder.Book));
        }
    }

    [Fact]
    public void A_missing_book_is_simply_brought_back()
    {
        var (folder, backup) = Kept();
        using (folder)
        {
            File.Delete(folder.Book);
            Assert.Null(Restore.Make(backup, folder.Book, Now, merge: false).Kept);
            Assert.Equal(Lines.Clicks(6).Select(e => e.Json), Read(folder.Book));
            var other = folder.At(Path.Combine("new", "place.closemown"));
            Assert.Equal(other, Restore.Make(backup, other, Now, merge: false).Path);
            Assert.Equal(Lines.Clicks(6).Select(e => e.Json), Read(other));
        }
    }

    [Fact]
    public void What_differs_under_one_id_stays_as_the_backup_has_it()
    {
        var (folder, backup) = Kept();
        using (folder)
        {
            File.Delete(folder.Book);
            using (var other = folder.Open()) other.Append(Lines.Entry("""{"kind":"clicks","left":-3}""", 2));
            var report = Restore.Make(backup, folder.Book, Now, merge: true);
            Assert.Equal((1L, 0L), (report.Conflicts, report.Merged));
            Assert.Equal(Lines.Clicks(6).Select(e => e.Json), Read(folder.Book));
        }
    }

    [Fact]
    public void A_bad_backup_or_a_book_in_use_changes_nothing()
    {
        var (folder, backup) = Kept();
        using (folder)
        {
            var before = Read(folder.Book).ToList();
            var damaged = folder.At("damaged.closemown");
            var bytes = File.ReadAllBytes(backup);
            bytes[bytes.AsSpan().IndexOf("turn 4"u8) + 5] = (byte)'5';
            File.WriteAllBytes(damaged, bytes);
            void Refused(BookTrouble trouble, string from, string to)
            {
                Assert.Equal(trouble, Assert.Throws<BookException>(() => Restore.Make(from, to, Now, merge: true)).Trouble);
                Assert.Equal(before, Read(folder.Book));
                Assert.DoesNotContain(Names(folder), n => n.Contains("restore", StringComparison.Ordinal) || n.EndsWith(".part", StringComparison.Ordinal));
            }
            Refused(BookTrouble.Damaged, damaged, folder.Book);
            Refused(BookTrouble.Missing, folder.At("none"), folder.Book);
            Refused(BookTrouble.BadPlace, folder.Book, folder.Book);
            Refused(BookTrouble.BadPlace, backup, folder.Path);
            Refused(BookTrouble.BadPlace, backup, BookFile.InMemory);
            using (folder.Open()) Refused(BookTrouble.Locked, backup, folder.Book);
            Assert.NotNull(Restore.Make(backup, folder.Book, Now, merge: false).Kept);
        }
    }
}
