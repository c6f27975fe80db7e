using System.Text;
using Closemown.Book;
using Closemown.Tests.Entries;
using Xunit;

namespace Closemown.Tests.Book;

public sealed class VerificationTests
{
    private static TempFolder Filled(int entries = 5)
    {
        var folder = new TempFolder();
        using var book = folder.Open();
        book.AppendAll(Lines.Clicks(entries), allOrNone: true);
        book.Append(Lines.Entry("""{"kind":"weather","date":"2026-05-01","tMaxC":14}""", 90));
        return folder;
    }

    [Fact]
    public void A_whole_book_is_whole()
    {
        using var folder = Filled();
        var report = Verification.Run(folder.Book);
        Assert.True(report.Ok);
        Assert.Equal((folder.Book, 2, 5L, 1L), (report.Path, report.Version, report.Entries, report.Weather));
        using var book = folder.Open();
        Assert.Equal(book.HashAt(5), report.Head);
        Assert.True(Verification.Run(folder.Book).Ok);          // also while it is open
    }

    [Theory]
    [InlineData("update entry set json = replace(json, 'turn 3', 'turn 8') where seq = 3", "entry", 3, "chain is broken")]
    [InlineData("update entry set json = json || ' ' where seq = 2", "entry", 2, "chain is broken")]
    [InlineData("update entry set hash = replace(hash, substr(hash, 1, 8), '00000000') where seq = 4", "entry", 4, "chain is broken")]
    [InlineData("update entry set id = '019de28d-3c00-7000-8000-0000000000ff' where seq = 2", "entry", 2, "is filed under")]
    [InlineData("delete from entry where seq = 3", "entry", 4, "Entry 3 is missing before it")]
    [InlineData("delete from entry where seq = 1", "entry", 2, "Entry 1 is missing before it")]
    [InlineData("update weather set json = replace(json, '14', '15')", "weather", 1, "not what was written")]
    [InlineData("update weather set json = '{}'", "weather", 1, "not what was written")]
    [InlineData("delete from weather_hash", "weather", 1, "not what was written")]
    [InlineData("delete from weather", "weather", 0, "1 of weather that a hash is kept of is missing")]
    [InlineData("update weather set date = '2026-05-02'", "weather", 1, "columns do not agree")]
    public void Tampering_is_found_and_the_first_bad_row_named(string sql, string table, long row, string message)
    {
        using var folder = Filled();
        // The guards are put back, so that only the row gives it away.
        folder.Do($"drop trigger entry_no_update; drop trigger entry_no_delete; drop trigger weather_no_update; drop trigger weather_no_delete; drop trigger weather_hash_no_delete; drop trigger weather_hash_goes; {sql};"
            + string.Join(';', BookFormat.Guards(2).Where(s => new[] { " entry_no_update ", " entry_no_delete ", " weather_no_update ", " weather_no_delete ", " weather_hash_no_delete ", " weather_hash_goes " }.Any(name => s.Contains(name, StringComparison.Ordinal)))));
        var report = Verification.Run(folder.Book);
        Assert.False(report.Ok);
        Assert.Equal((table, row), (report.Problems[0].Table, report.Problems[0].Row));
        Assert.Contains(message, report.Problems[0].Message, StringComparison.Ordinal);
        Assert.Contains("backup", report.Problems[0].Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void An_entry_rewritten_with_its_hash_gives_itself_away_at_the_next()
    {
        using var folder = Filled();
        string json, hash;
        using (var book = folder.Open())
        {
            json = book.ReadAll()[1].Entry.Json.Replace("turn 2", "turn 6", StringComparison.Ordinal);
            hash = HashChain.Next(book.HashAt(1), json);
        }
        folder.Do($"drop trigger entry_no_update; update entry set json = '{json}', hash = '{hash}' where seq = 2; {BookFormat.Steps[0].Single(s => s.Contains("entry_no_update", StringComparison.Ordinal))}");
        Assert.Equal(3, Verification.Run(folder.Book).Problems[0].Row);
    }

    [Fact]
    public void A_trigger_that_is_none_of_a_books_is_found()
    {
        using var folder = Filled();
        folder.Do("create trigger mine after insert on entry begin delete from weather_hash; end");
        Assert.Contains("The trigger mine is none of a book's", Assert.Single(Verification.Run(folder.Book).Problems).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("drop trigger entry_no_replace", "trigger entry_no_replace")]
    [InlineData("drop index weather_day", "index weather_day")]
    [InlineData("drop trigger entry_no_delete; create trigger entry_no_delete before delete on entry begin select 1; end", "trigger entry_no_delete")]
    public void A_guard_that_is_missing_is_found(string sql, string what)
    {
        using var folder = Filled();
        folder.Do(sql);
        Assert.Contains($"The {what} is missing or was altered.", Assert.Single(Verification.Run(folder.Book).Problems).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void One_changed_byte_of_the_file_is_found()
    {
        using var folder = Filled();
        var bytes = File.ReadAllBytes(folder.Book);
        var at = bytes.AsSpan().IndexOf("turn 4"u8);
        Assert.True(at > 0);
        bytes[at + 5] = (byte)'5';
        File.WriteAllBytes(folder.Book, bytes);
        Assert.Equal(("entry", 4L), (Verification.Run(folder.Book).Problems[0].Table, Verification.Run(folder.Book).Problems[0].Row));
    }

    [Fact]
    public void Any_changed_byte_of_an_entry_or_its_hash_is_found_and_no_changed_byte_crashes()
    {
        using var folder = Filled();
        var whole = File.ReadAllBytes(folder.Book);
        string first;
        using (var book = folder.Open()) first = book.ReadAll()[0].Entry.Json;
        var start = whole.AsSpan().IndexOf(Encoding.UTF8.GetBytes(first));
        var random = new Random(5);
        for (var n = 0; n < 150; n++)
        {
            var inside = n < 75;
            var at = inside ? start + random.Next(Encoding.UTF8.GetByteCount(first) + 64) : random.Next(whole.Length);
            var bytes = (byte[])whole.Clone();
            bytes[at] ^= (byte)(1 << random.Next(8));
            var path = folder.At($"changed-{n}");
            File.WriteAllBytes(path, bytes);
            var found = false;
            try
            {
                found = !Verification.Run(path).Ok;
            }
            catch (BookException)
            {
                found = true;
            }
            if (inside) Assert.True(found, $"byte {at} was changed and not found");
        }
    }

    [Fact]
    public void A_file_cut_short_is_found()
    {
        using var folder = Filled(200);
        using (var file = new FileStream(folder.Book, FileMode.Open)) file.SetLength(file.Length / 2 / 4096 * 4096);
        var problem = Verification.Run(folder.Book).Problems[0];
        Assert.Contains("backup", problem.Remedy, StringComparison.Ordinal);
    }
}
