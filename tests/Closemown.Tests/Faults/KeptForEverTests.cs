using System.Text;
using System.Text.Json.Nodes;
using Closemown.Book;
using Closemown.Entries;
using Closemown.Tests.Book;
using Closemown.Tests.Entries;
using Closemown.Tests.Pipe;
using CsCheck;
using Xunit;

namespace Closemown.Tests.Faults;

/// <summary>What is accepted can be read back; what was once accepted is read for ever.</summary>
public sealed class KeptForEverTests
{
    private static EntryContext Now(string at) =>
        new() { NewId = t => EntryIds.Make(t, 0, 1), Now = () => DateTimeOffset.Parse(at, System.Globalization.CultureInfo.InvariantCulture), OnlyUnit = () => "m" };

    [Fact]
    public void F1_Twenty_thousand_pictures_in_a_text_are_kept_as_they_are()
    {
        var line = $$"""{"kind":"clicks","unit":"m","left":1,"x":"{{string.Concat(Enumerable.Repeat("🌱", 20_000))}}"}""";
        Assert.Empty(EntryReader.Read(line, Now("2026-05-01T08:00:00Z"), out var entry));
        Assert.DoesNotContain("\\u", entry!.Json, StringComparison.Ordinal);
        Assert.Empty(EntryReader.Read(entry.Json, EntryContext.Stored, out var back));
        Assert.Equal(entry.Json, back!.Json);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(60)]
    [InlineData(140)]
    public void F1_A_line_near_the_limit_is_kept_or_refused_but_never_shuts_the_book(int under)
    {
        using var folder = new TempFolder();
        const string start = "{\"kind\":\"clicks\",\"unit\":\"m\",\"left\":1,\"x\":\"";
        using (var book = folder.Open())
        {
            var talk = new Talk(book: book);
            var answer = talk.Say(start + new string('a', EntryReader.MaxLineLength - start.Length - 2 - under) + "\"}");
            if (!(bool)answer["ok"]!) Assert.Contains("as it would be kept", (string)answer["error"]!["message"]!, StringComparison.Ordinal);
            talk.Did("""{"kind":"clicks","unit":"m","left":1}""");
        }
        using var again = folder.Open();
        Assert.NotEmpty(again.ReadAll());
        Assert.True(Verification.Run(folder.Book).Ok);
    }

    [Fact]
    public void F1_The_pipes_own_time_stops_at_the_last_year_that_is_taken()
    {
        using var folder = new TempFolder();
        using (var book = folder.Open())
        {
            var talk = new Talk(book: book);
            talk.Did("""{"kind":"clicks","unit":"m","left":1,"at":"2200-12-31T23:59:30Z"}""");
            var fault = talk.Fault("""{"kind":"clicks","unit":"m","left":1}""");
            Assert.Equal(("bad-value", "at"), (fault.Code, fault.Field));
            Assert.Contains("clock", fault.Remedy, StringComparison.Ordinal);
        }
        using var again = folder.Open();
        Assert.Single(again.ReadAll());
    }

    [Fact]
    public void F1_A_wrong_clock_is_refused_like_a_wrong_time_typed()
    {
        var fault = Assert.Single(EntryReader.Read("""{"kind":"clicks","unit":"m","left":1}""", Now("2201-01-02T00:00:00Z"), out var entry));
        Assert.Null(entry);
        Assert.Equal(("bad-value", "at"), (fault.Code, fault.Field));
    }

    [Fact]
    public void F1_A_book_that_was_shut_by_such_entries_opens_again()
    {
        // As an earlier version wrote them: pictures escaped to twelve characters each, a year past the last, a line over the limit.
        string[] shut =
        [
            $$"""{"v":1,"id":"{{Lines.Id(1):D}}","at":"2026-05-01T08:01:00Z","kind":"clicks","unit":"m","left":1,"x":"{{string.Concat(Enumerable.Repeat("\\uD83C\\uDF31", 20_000))}}"}""",
            $$"""{"v":1,"id":"{{Lines.Id(2):D}}","at":"2201-01-02T00:00:00Z","kind":"clicks","unit":"m","left":1}""",
            $$"""{"v":1,"id":"{{Lines.Id(3):D}}","at":"2026-05-01T08:03:00Z","kind":"clicks","unit":"m","left":1,"x":"{{new string('a', 70_000)}}"}""",
            $$"""{"v":1,"id":"{{Lines.Id(4):D}}","at":"2026-05-01T08:04:00Z","kind":"contact","unit":"\u200B","note":"a\u0007b","left":"none"}""".Replace("\\u200B", "\u200B", StringComparison.Ordinal),
        ];
        foreach (var line in shut)
        {
            Assert.Empty(EntryReader.Read(line, EntryContext.Stored, out var entry));
            Assert.Equal(line, entry!.Json);               // byte for byte: its hash is reckoned over it
        }
    }

    [Fact]
    public void F1_The_same_entry_in_an_earlier_form_is_the_same_entry()
    {
        var old = $$"""{"v":1,"id":"{{Lines.Id(1):D}}","at":"2026-05-01T08:01:00Z","kind":"clicks","unit":"m","note":"\uD83C\uDF31","left":1}""";
        var fresh = old.Replace("\\uD83C\\uDF31", "🌱", StringComparison.Ordinal);
        using var folder = new TempFolder();
        using var book = folder.Open();
        Assert.Equal(AppendResult.Added, book.Append(Lines.Read(old)));
        Assert.Equal(old, book.ReadAll()[0].Entry.Json);    // an export and import keeps the chain
        Assert.Equal(AppendResult.AlreadyThere, book.Append(Lines.Read(fresh)));
        Assert.Equal(AppendResult.Conflict, book.Append(Lines.Read(fresh.Replace("🌱", "🌲", StringComparison.Ordinal))));
    }

    [Fact]
    public void F1_Whatever_is_accepted_is_read_back_the_same()
    {
        var text = Gen.OneOf(Gen.String[0, 40], Gen.Char['\u0001', '\uffff'].Array[0, 20].Select(c => new string(c)), Gen.Const("🌱\u2028\u2029\u007f\"\\"));
        Gen.Select(Gen.Int[0, Kinds.All.Count - 1], text, text, text).Sample((k, note, name, value) =>
        {
            var o = JsonNode.Parse(Lines.Whole(Kinds.All[k].Example, 1))!.AsObject();
            o["note"] = note;
            if (!o.ContainsKey(name)) o[name] = value;
            if (EntryReader.Read(o.ToJsonString(), EntryContext.Whole, out var entry).Count > 0) return;
            Assert.Empty(EntryReader.Read(entry!.Json, EntryContext.Stored, out var back));
            Assert.Equal(entry.Json, back!.Json);
            Assert.Equal(Encoding.UTF8.GetByteCount(entry.Json), Encoding.UTF8.GetBytes(back.Json).Length);
        }, iter: 2000, seed: "0000KeptForEver");
    }
}
