using Closemown.Book;
using Closemown.Entries;
using Closemown.Tests.Entries;
using Closemown.Tests.Pipe;
using Xunit;

namespace Closemown.Tests.Book;

/// <summary>A damaged book: refused, or asked to answer from what is sound.</summary>
public sealed class DamagedBookTests
{
    private static readonly BookOptions SoundPart = new() { SoundPart = true };

    private static TempFolder Written(int entries = 12)
    {
        var folder = new TempFolder();
        using var book = folder.Open();
        book.AppendAll(Lines.Clicks(entries), allOrNone: true);
        return folder;
    }

    private static BookException Damaged(Action act)
    {
        var e = Assert.Throws<BookException>(act);
        Assert.Equal(BookTrouble.Damaged, e.Trouble);
        Assert.Contains("restore", e.Remedy, StringComparison.Ordinal);
        return e;
    }

    [Fact]
    public void F4_An_altered_entry_is_met_when_the_book_is_loaded()
    {
        using var folder = Written();
        folder.Do("drop trigger entry_no_update; update entry set json = replace(json, '\"left\":6', '\"left\":7') where seq = 5");
        Assert.Contains("entry 5", Damaged(() => folder.Open().ReadAll()).Message, StringComparison.Ordinal);
        Assert.Contains("--sound-part", Damaged(() => new Talk(book: folder.Open(new BookOptions { ReadOnly = true }))).Remedy, StringComparison.Ordinal);
        using var book = folder.Open();
        Damaged(() => book.Append(Lines.Clicks(13)[12]));                  // whoever only writes meets it too
        Damaged(() => Exporter.Write(book, TextWriter.Null));
    }

    [Fact]
    public void F4_Asked_for_the_sound_part_is_given_said_and_takes_nothing()
    {
        using var folder = Written();
        folder.Do("drop trigger entry_no_update; update entry set json = replace(json, '\"left\":6', '\"left\":7') where seq = 5");
        using var book = folder.Open(SoundPart);
        var talk = new Talk(book: book);
        Assert.Equal(4, talk.With.Desk.Arrived.Count);
        Assert.Equal(5, book.Damage!.FromEntry);
        foreach (var ask in (string[])["next", "steel", "today", "height"])
        {
            var damaged = talk.Did($$"""{"ask":"{{ask}}"}""")["damaged"]!;
            Assert.Equal(5, (int)damaged["fromEntry"]!);
            Assert.Contains("entries 1 to 4 only", (string)damaged["message"]!, StringComparison.Ordinal);
        }
        Assert.Equal(5, (int)talk.Say("""{"ask":"nothing"}""")["damaged"]!["fromEntry"]!);
        var refused = talk.Say("""{"kind":"clicks","left":1}""");
        Assert.Equal(("book", 1), ((string)refused["error"]!["code"]!, (int)refused["error"]!["entry"]!["left"]!));
        Assert.Contains("takes no entry", (string)refused["error"]!["message"]!, StringComparison.Ordinal);
    }

    [Fact]
    public void F4_A_whole_book_asked_for_its_sound_part_is_as_ever()
    {
        using var folder = Written();
        using var book = folder.Open(SoundPart);
        Assert.Null(book.Damage);
        Assert.Null(new Talk(book: book).Did("""{"ask":"next"}""")["damaged"]);
        Assert.Equal(AppendResult.Added, book.Append(Lines.Clicks(13)[12]));
    }

    [Fact]
    public void F4_An_end_that_is_missing_is_met_though_the_chain_fits()
    {
        using var folder = Written();
        // As one changed byte does it: the count of cells of the last leaf says one fewer.
        var page = 0;
        var bytes = File.ReadAllBytes(folder.Book);
        for (var at = 4096; at < bytes.Length; at += 4096)
        {
            if (LogPage.LastEntry(bytes.AsSpan(at, 4096), first: false) == 12) page = at;
        }
        Assert.NotEqual(0, page);
        bytes[page + 4]--;
        File.WriteAllBytes(folder.Book, bytes);
        Assert.Contains("ids of 12 entries, and 11 can be reached", Damaged(() => folder.Open().ReadAll()).Message, StringComparison.Ordinal);
        using var book = folder.Open(SoundPart);
        Assert.Equal(11, book.ReadAll().Count);
        Assert.Equal(12, book.Damage!.FromEntry);
    }

    [Fact]
    public void F4_Altered_weather_is_met_where_it_is_read()
    {
        using var folder = Written(2);
        using (var book = folder.Open()) book.AppendAll([Lines.Forecast(50, 12), Lines.Forecast(51, 13, "2026-05-04")], allOrNone: true);
        folder.Do("drop trigger weather_no_update; update weather set json = replace(json, '12', '18') where seq = 1");
        Damaged(() => folder.Open().ReadWeather());
        using var part = folder.Open(SoundPart);
        Assert.Equal((null, 1L), (part.Damage!.FromEntry, part.Damage.Weather));
        Assert.Single(part.ReadWeather());
        Assert.Equal(2, part.ReadAll().Count);
        Damaged(() => part.Append(Lines.Clicks(3)[2]));
    }

    [Fact]
    public void F5_Zeroed_sectors_are_told_as_damage_with_the_remedy_and_end_nothing()
    {
        using var folder = Written(150);
        using (var book = folder.Open()) book.AppendAll([.. Enumerable.Range(0, 20).Select(i => Lines.Forecast(500 + i, 12 + i, $"2026-05-{i + 1:00}"))], allOrNone: true);
        var whole = File.ReadAllBytes(folder.Book);
        var said = Said(whole, folder);
        var (told, same) = (0, 0);
        for (var sector = 1; sector < whole.Length / 512; sector += 2)
        {
            var bytes = (byte[])whole.Clone();
            bytes.AsSpan(sector * 512, 512).Clear();
            if (Said(bytes, folder) is { } answer)
            {
                Assert.Equal(said, answer);
                same++;
            }
            else
            {
                told++;
            }
        }
        Assert.True(told > whole.Length / 512 / 6, $"{told} told, {same} the same");
    }

    /// <summary>What a file of those bytes says when it is opened as usual; null where it is refused as a book is.</summary>
    private static string? Said(byte[] bytes, TempFolder folder)
    {
        var path = folder.At("zeroed");
        foreach (var beside in new[] { "", "-wal", "-shm", "-journal" }) File.Delete(path + beside);
        File.WriteAllBytes(path, bytes);
        try
        {
            using var book = BookFile.Open(path, new BookOptions { ReadOnly = true });
            using var text = new StringWriter();
            Exporter.Write(book, text);
            foreach (var e in book.ReadWeather()) text.WriteLine(e.Json);
            return text + book.Stamp.ToString();
        }
        catch (BookException e)
        {
            Assert.NotEmpty(e.Remedy);
            return null;
        }
    }

    [Fact]
    public void F5_Zeroed_sectors_still_give_the_sound_part()
    {
        using var folder = Written(150);
        var whole = File.ReadAllBytes(folder.Book);
        var parts = new HashSet<int>();
        for (var sector = 24; sector < whole.Length / 512; sector += 5)
        {
            var bytes = (byte[])whole.Clone();
            bytes.AsSpan(sector * 512, 512).Clear();
            foreach (var beside in new[] { "-wal", "-shm" }) File.Delete(folder.Book + beside);
            File.WriteAllBytes(folder.Book, bytes);
            using var book = folder.Open(new BookOptions { SoundPart = true, ReadOnly = true });
            var entries = book.ReadAll();
            Assert.Equal(Lines.Clicks(150).Take(entries.Count).Select(e => e.Json), entries.Select(s => s.Entry.Json));
            Assert.True(entries.Count == 150 || book.Damage!.FromEntry == entries.Count + 1);
            parts.Add(entries.Count);
        }
        Assert.True(parts.Count > 3, string.Join(' ', parts));
    }
}
