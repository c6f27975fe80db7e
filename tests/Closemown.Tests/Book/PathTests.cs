using System.Text;
using Closemown.Book;
using Closemown.Tests.Entries;
using Microsoft.Data.Sqlite;
using Xunit;

namespace Closemown.Tests.Book;

/// <summary>Books at odd places: links, odd names, where nothing can be written; and exports that fail.</summary>
public sealed class PathTests
{
    public static TheoryData<string> OddNames { get; } = ["b%41.closemown", "b%.closemown", "100%25 sure", "a#b?c=d&e.closemown", "two  spaces.closemown", "草 Größe Ω 🌱.closemown", "semi;colon='quote\".closemown", "file:b", ".hidden"];

    private static void Fill(string path)
    {
        using var book = BookFile.Open(path);
        book.AppendAll(Lines.Clicks(5), allOrNone: true);
    }

    [Fact]
    public void F6_A_book_that_is_a_link_is_the_book_it_leads_to()
    {
        using var folder = new TempFolder();
        Directory.CreateDirectory(folder.At("real"));
        var real = Path.Combine(folder.At("real"), "book.closemown");
        Fill(real);
        File.CreateSymbolicLink(folder.At("one"), real);
        File.CreateSymbolicLink(folder.At("two"), folder.At("one"));
        foreach (var link in new[] { folder.At("one"), folder.At("two") })
        {
            Assert.True(Verification.Run(link).Ok);
            using var book = BookFile.Open(link);
            Assert.Equal(real, book.Where);
            Assert.Equal(AppendResult.AlreadyThere, book.Append(Lines.Clicks(5)[4]));
            Assert.Equal(AppendResult.Added, book.Append(Lines.Entry("""{"kind":"mow","hours":1}""", link.EndsWith("one", StringComparison.Ordinal) ? 61 : 62)));
            Assert.True(File.Exists(real + "-wal"));           // the log lies beside the target, and is looked for there
            Assert.False(File.Exists(link + "-wal"));
        }
        var backup = Backup.Make(folder.At("two"), folder.At("copy"), DateOnly.MinValue).Path;
        Assert.Equal(7, Salvage.Read(folder.At("one")).Entries.Count);
        Restore.Make(backup, folder.At("one"), new DateTime(2026, 5, 1), merge: false);
        Assert.Equal(real, new FileInfo(folder.At("one")).LinkTarget);  // the link stays; what it leads to is restored
        Assert.Equal(7, Verification.Run(real).Entries);
    }

    [Fact]
    public void F6_A_link_to_nothing_and_a_ring_of_links_are_told_as_what_they_are()
    {
        using var folder = new TempFolder();
        File.CreateSymbolicLink(folder.At("nowhere"), folder.At("gone"));
        File.CreateSymbolicLink(folder.At("a"), folder.At("b"));
        File.CreateSymbolicLink(folder.At("b"), folder.At("a"));
        foreach (var (name, told) in new[] { ("nowhere", $"a link to {folder.At("gone")}, and there is nothing there"), ("a", "leads back to itself") })
        {
            foreach (var act in (Action[])[() => BookFile.Open(folder.At(name)), () => BookFile.Open(folder.At(name), new BookOptions { ReadOnly = true }), () => Verification.Run(folder.At(name)), () => Salvage.Read(folder.At(name))])
            {
                var e = Assert.Throws<BookException>(act);
                Assert.Equal(BookTrouble.BadPlace, e.Trouble);
                Assert.Contains(told, e.Message, StringComparison.Ordinal);
            }
        }
        Assert.False(File.Exists(folder.At("gone")));
    }

    [Theory]
    [MemberData(nameof(OddNames))]
    public void F16_An_odd_name_is_a_name_in_all_ways_of_opening(string name)
    {
        using var folder = new TempFolder();
        Fill(folder.At("decoy"));
        var path = folder.At(name);
        Fill(path);
        Assert.Equal(5, Verification.Run(path).Entries);
        using (var book = BookFile.Open(path, new BookOptions { ReadOnly = true })) Assert.Equal(5, book.ReadAll().Count);
        using (var alone = LoneFile.Open(path)) Assert.Equal(5, BookFile.Number(alone, "select count(*) from entry"));
        Assert.Equal(5, LoneFile.Last(path)!.Value.Seq);
        var copy = Backup.Make(path, folder.At("copy " + name), DateOnly.MinValue).Path;
        Restore.Make(copy, path, new DateTime(2026, 5, 1), merge: true);
        Assert.Equal(5, Salvage.Read(path).Entries.Count);
        Assert.True(File.Exists(path));
        Assert.DoesNotContain(Directory.GetFiles(folder.Path), f => f.EndsWith("-wal", StringComparison.Ordinal));
    }

    [Fact]
    public void F16_A_book_named_by_a_percent_code_is_not_the_one_the_code_stands_for()
    {
        using var folder = new TempFolder();
        Fill(folder.At("bA"));
        using (var book = BookFile.Open(folder.At("b%41"))) book.Append(Lines.Clicks(1)[0]);
        Assert.Equal(1, LoneFile.Last(folder.At("b%41"))!.Value.Seq);
        Assert.Equal(5, LoneFile.Last(folder.At("bA"))!.Value.Seq);
    }

    [Fact]
    public void F15_An_export_that_fails_leaves_nothing_and_can_be_tried_again()
    {
        using var folder = new TempFolder();
        Fill(folder.Book);
        using var book = folder.Open();
        var file = folder.At("lines.jsonl");
        var e = Assert.Throws<BookException>(() => Exporter.ToFile(file, to =>
        {
            Exporter.Write(book, to);
            throw new IOException("No space left on device");
        }));
        Assert.Contains(file, e.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(Directory.GetFiles(folder.Path), f => f.Contains("lines", StringComparison.Ordinal));
        Assert.Equal(5, Exporter.ToFile(file, to => Exporter.Write(book, to)).Entries);
        Assert.Equal(5, File.ReadAllLines(file, Encoding.UTF8).Length);
        Assert.Equal(BookTrouble.Exists, Assert.Throws<BookException>(() => Exporter.ToFile(file, to => Exporter.Write(book, to))).Trouble);
        Assert.Equal(BookTrouble.BadPlace, Assert.Throws<BookException>(() => Exporter.ToFile(folder.At(Path.Combine("no", "x")), to => Exporter.Write(book, to))).Trouble);
    }

    [Fact]
    public void What_reads_wrongly_is_told_and_not_thrown_as_it_is()
    {
        Assert.True(BookException.IsDamage(new InvalidOperationException()));
        Assert.False(BookException.IsDamage(new ObjectDisposedException("book")));
        Assert.True(BookException.IsUnreadable(new SqliteException("x", 11)));
    }
}
