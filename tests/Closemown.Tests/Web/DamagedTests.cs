using System.Net;
using System.Text.Json.Nodes;
using Closemown.Book;
using Microsoft.Data.Sqlite;
using Xunit;

namespace Closemown.Tests.Web;

/// <summary>A server over a book that is damaged, or that is changed from outside while it runs.</summary>
public sealed class DamagedTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private static void AlterSixth(string path)
    {
        using var raw = new SqliteConnection($"Data Source={path};Pooling=False");
        raw.Open();
        using var command = raw.CreateCommand();
        command.CommandText = "drop trigger entry_no_update; update entry set json = replace(json, '0.5', '5.5') where seq = 6";
        command.ExecuteNonQuery();
    }

    private static async Task<(HttpStatusCode Status, string Text)> Get(ServerBench bench, string path)
    {
        using var answer = await bench.Machine.GetAsync(path, Stop);
        return (answer.StatusCode, await answer.Content.ReadAsStringAsync(Stop));
    }

    private static async Task<JsonObject[]> Enter(ServerBench bench, params string[] lines)
    {
        using var answer = await bench.Enter(string.Join('\n', lines));
        return [.. (await answer.Content.ReadAsStringAsync(Stop)).Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => JsonNode.Parse(l)!.AsObject())];
    }

    public static TheoryData<string> Changes { get; } = ["replaced", "written over", "removed"];

    [Theory]
    [MemberData(nameof(Changes))]
    public async Task F3_A_book_changed_under_a_server_is_noticed_and_every_entry_handed_back(string how)
    {
        await using var bench = await ServerBench.Start(entries: Lines.All, spoil: path =>
        {
            var older = Backup.Make(path, path + ".older", DateOnly.MinValue).Path;
            using var book = BookFile.Open(path);
            foreach (var n in Enumerable.Range(100, 5)) Importer.Read(new StringReader(Lines.Mow(n)), book);
            _ = older;
        });
        Assert.Equal(HttpStatusCode.OK, (await Get(bench, "/today.json")).Status);
        Assert.True((bool)(await Enter(bench, Lines.Mow(200)))[0]["ok"]!);
        Assert.Equal(HttpStatusCode.OK, (await Get(bench, "/health")).Status);
        switch (how)
        {
            case "replaced":
                File.Move(bench.Book + ".older", bench.Book, overwrite: true);
                break;
            case "written over":
                await File.WriteAllBytesAsync(bench.Book, await File.ReadAllBytesAsync(bench.Book + ".older", Stop), Stop);
                break;
            default:
                File.Delete(bench.Book);
                break;
        }
        foreach (var round in (int[])[201, 203])
        {
            var answers = await Enter(bench, Lines.Mow(round), Lines.Mow(round + 1));
            Assert.Equal(2, answers.Length);
            for (var i = 0; i < 2; i++)
            {
                var error = answers[i]["error"]!;
                Assert.Equal("book", (string)error["code"]!);
                Assert.Contains("changed from outside", (string)error["message"]!, StringComparison.Ordinal);
                Assert.Contains("start it again", (string)error["remedy"]!, StringComparison.Ordinal);
                Assert.True(JsonNode.DeepEquals(JsonNode.Parse(Lines.Mow(round + i)), error["entry"]));
            }
        }
        foreach (var path in (string[])["/health", "/today.json", "/", "/steel"])
        {
            Assert.Equal(HttpStatusCode.ServiceUnavailable, (await Get(bench, path)).Status);
        }
        // What the server still knows can be fetched before it is ended.
        if (how != "written over") Assert.Contains(Lines.Mow(200)[..60], (await Get(bench, "/book.jsonl")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task F4_A_damaged_book_is_not_answered_from()
    {
        await using var bench = await ServerBench.Start(entries: Lines.All, spoil: AlterSixth);
        foreach (var path in (string[])["/health", "/today.json", "/steel.json", "/", "/steel", "/book.jsonl", "/book.json"])
        {
            var (status, text) = await Get(bench, path);
            Assert.Equal((HttpStatusCode.ServiceUnavailable, path), (status, path));
            if (path != "/health") Assert.Contains("The chain is broken at entry 6", text, StringComparison.Ordinal);
        }
        var refused = (await Enter(bench, Lines.Mow(200)))[0]["error"]!;
        Assert.Equal("book", (string)refused["code"]!);
        Assert.NotNull(refused["entry"]);
        Assert.Equal(Lines.Count, bench.Entries());
    }

    [Fact]
    public async Task F4_Asked_for_the_sound_part_every_page_and_answer_says_so()
    {
        await using var bench = await ServerBench.Start(o => o with { SoundPart = true }, Lines.All, AlterSixth);
        foreach (var path in (string[])["/today.json", "/steel.json", "/height.json", "/turf.json", "/book.json"])
        {
            var (status, text) = await Get(bench, path);
            Assert.Equal((HttpStatusCode.OK, path), (status, path));
            Assert.Equal(6, (int)JsonNode.Parse(text)!["damaged"]!["fromEntry"]!);
        }
        foreach (var path in (string[])["/", "/steel", "/height", "/turf", "/plan", "/book", "/bench", "/new", "/look"])
        {
            Assert.Contains("this rests on entries 1 to 5 only", (await Get(bench, path)).Text, StringComparison.Ordinal);
        }
        using (var lines = await bench.Machine.GetAsync("/book.jsonl", Stop))
        {
            Assert.Equal(["from entry 6"], lines.Headers.GetValues("Closemown-Damaged"));
            Assert.Equal(5, (await lines.Content.ReadAsStringAsync(Stop)).Split('\n', StringSplitOptions.RemoveEmptyEntries).Length);
        }
        Assert.Equal(HttpStatusCode.ServiceUnavailable, (await Get(bench, "/plan.ics")).Status);
        Assert.Equal(HttpStatusCode.ServiceUnavailable, (await Get(bench, "/health")).Status);
        Assert.Contains("takes no entry", (string)(await Enter(bench, Lines.Mow(200)))[0]["error"]!["message"]!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task F3_Health_means_that_the_entries_were_read()
    {
        // Nobody has asked anything yet: the look at its health reads them.
        await using var bench = await ServerBench.Start(entries: Lines.All, spoil: path =>
        {
            using var raw = new SqliteConnection($"Data Source={path};Pooling=False");
            raw.Open();
            using var command = raw.CreateCommand();
            command.CommandText = "drop trigger entry_no_update; update entry set json = '{' where seq = 3";
            command.ExecuteNonQuery();
        });
        Assert.Equal(HttpStatusCode.ServiceUnavailable, (await Get(bench, "/health")).Status);
    }
}
