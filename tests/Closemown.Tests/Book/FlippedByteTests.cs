using Closemown.Book;
using Closemown.Entries;
using Closemown.Tests.Entries;
using Xunit;

namespace Closemown.Tests.Book;

/// <summary>A byte of the file that is not what was written is either found, or it changes nothing that the book says.</summary>
public sealed class FlippedByteTests
{
    private static readonly Entry[] Written =
    [
        .. Lines.Clicks(6), Lines.Void(2, 7, 7), Lines.Entry($$"""{"kind":"locked","note":"{{new string('n', 5000)}}"}""", 8),
        Lines.Entry("""{"kind":"weather","date":"2026-05-01","tMaxC":14}""", 90), Lines.Forecast(91, 12), Lines.Forecast(92, 13), Lines.Forecast(93, 11, "2026-05-06"),
    ];

    private static string Said(string path)
    {
        using var book = BookFile.Open(path, new BookOptions { ReadOnly = true });
        using var text = new StringWriter();
        Exporter.Write(book, text);
        foreach (var e in book.ReadWeather()) text.WriteLine(e.Json);
        foreach (var s in book.ReadAll()) text.WriteLine(s.Hash);
        return text.ToString();
    }

    private static bool Found(string path)
    {
        try
        {
            return !Verification.Run(path).Ok;
        }
        catch (BookException)
        {
            return true;
        }
    }

    [Fact]
    public void In_the_file_every_part_of_it_tried()
    {
        using var folder = new TempFolder();
        using (var book = folder.Open()) book.AppendAll(Written, allOrNone: true);
        var whole = File.ReadAllBytes(folder.Book);
        var said = Said(folder.Book);
        var more = Lines.Entry("""{"kind":"clicks","left":1}""", 400);
        var (random, found, harmless) = (new Random(20260501), 0, 0);
        var path = folder.At("changed");
        // The header byte by byte, the rest by draws: every byte is tried by the bench's command "flips".
        foreach (var at in Enumerable.Range(0, 100).Concat(Enumerable.Range(0, 400).Select(_ => random.Next(100, whole.Length))))
        {
            var bytes = (byte[])whole.Clone();
            bytes[at] ^= (byte)random.Next(1, 256);
            File.WriteAllBytes(path, bytes);
            if (Found(path)) found++;
            else
            {
                harmless++;
                Assert.True(said == Said(path), $"byte {at}: {whole[at]:x2} to {bytes[at]:x2} changes what the book says, and is not found");
                using (var book = BookFile.Open(path))
                {
                    try
                    {
                        Assert.Equal(AppendResult.Added, book.Append(more));
                    }
                    catch (BookException e) when (e.Trouble == BookTrouble.ReadOnly)
                    {
                        Assert.Equal(18, at);               // the version for writing: SQLite reads the file and writes nothing to it
                    }
                }
                Assert.False(Found(path), $"byte {at}: {whole[at]:x2} to {bytes[at]:x2} is not found, but the next write damages the book");
            }
            foreach (var beside in new[] { "-wal", "-shm", "-journal" }) File.Delete(path + beside);
        }
        Assert.InRange(found, 60, 499);               // otherwise the draws miss the rows, or the check cannot pass
        Assert.True(harmless > 0);
    }

    /// <summary>A book of twelve entries cut off as if by a power cut: the file and its log as they lie there while it is open.</summary>
    private static (string File, string Log) CutOff(TempFolder folder)
    {
        var (file, log) = (folder.At("cut"), folder.At("cut-wal"));
        using var book = folder.Open();
        foreach (var e in Lines.Clicks(12)) book.Append(e);
        File.Copy(folder.Book, file);
        File.Copy(folder.Book + "-wal", log);
        return (file, log);
    }

    [Fact]
    public void In_the_log_no_more_than_the_last_write_is_lost_untold()
    {
        using var folder = new TempFolder();
        var (file, log) = CutOff(folder);
        var (bytes, whole) = (File.ReadAllBytes(file), File.ReadAllBytes(log));
        var (random, told, all, lastLost) = (new Random(20260502), 0, 0, 0);
        for (var n = 0; n < 250; n++)
        {
            var at = n < 32 ? n : random.Next(whole.Length);
            var changed = (byte[])whole.Clone();
            changed[at] ^= (byte)random.Next(1, 256);
            File.WriteAllBytes(file, bytes);
            File.WriteAllBytes(log, changed);
            File.Delete(file + "-shm");
            if (Found(file))
            {
                told++;
                Assert.Equal(BookTrouble.Damaged, Assert.Throws<BookException>(() => BookFile.Open(file)).Trouble);
                Assert.Equal(changed, File.ReadAllBytes(log));         // looking destroys no evidence
                continue;
            }
            using var book = BookFile.Open(file, new BookOptions { ReadOnly = true });
            if (book.Count == 12) all++;
            else lastLost++;
            Assert.True(book.Count >= 11, $"byte {at} of the log: {12 - book.Count} entries are gone and nothing is said");
        }
        Assert.True(told > 60 && lastLost > 0, $"told {told}, all there {all}, last lost {lastLost}");
    }

    [Fact]
    public void A_log_cut_short_loses_its_end_and_nothing_before_it()
    {
        using var folder = new TempFolder();
        var (file, log) = CutOff(folder);
        var (bytes, whole) = (File.ReadAllBytes(file), File.ReadAllBytes(log));
        var before = 0L;
        for (var length = 0; length <= whole.Length; length += 1373)
        {
            File.WriteAllBytes(file, bytes);
            File.WriteAllBytes(log, whole[..length]);
            File.Delete(file + "-shm");
            Assert.True(length < 10000 || Verification.Run(file).Ok);           // before that, the tables themselves are in the log
            if (length < 10000) continue;
            using var book = BookFile.Open(file, new BookOptions { ReadOnly = true });
            Assert.Equal(Lines.Clicks(12).Take((int)book.Count).Select(e => e.Json), book.ReadAll().Select(s => s.Entry.Json));
            Assert.True(book.Count >= before);
            before = book.Count;
        }
        Assert.InRange(before, 11, 12);
    }

    [Fact]
    public void A_write_that_was_cut_off_is_no_damage()
    {
        using var folder = new TempFolder();
        var (file, log) = CutOff(folder);
        var whole = File.ReadAllBytes(log);
        whole.AsSpan(whole.Length - 300).Clear();       // the last page did not get to the disk
        File.WriteAllBytes(log, whole);
        using (var book = BookFile.Open(file))
        {
            Assert.Equal(11, book.Count);
            Assert.Equal(AppendResult.Added, book.Append(Lines.Clicks(12)[11]));
        }
        Assert.True(Verification.Run(file).Ok);
    }
}
