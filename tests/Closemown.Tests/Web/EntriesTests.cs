using System.Text.Json.Nodes;
using Closemown.Book;
using Closemown.Entries;
using Xunit;

namespace Closemown.Tests.Web;

/// <summary>Entries sent over the web, once or more than once, and those of other programs.</summary>
public sealed class EntriesTests
{
    [Fact]
    public async Task Sent_twice_is_entered_once()
    {
        await using var bench = await ServerBench.Start();
        var lines = string.Join('\n', Lines.All);
        var first = await Answers(await bench.Enter(lines));
        var second = await Answers(await bench.Enter(lines));
        Assert.All(first.Concat(second), a => Assert.True((bool)a["ok"]!));
        Assert.Equal(first.Select(a => (string)a["id"]!), second.Select(a => (string)a["id"]!));
        Assert.Equal(Lines.Count, bench.Entries());
    }

    [Fact]
    public async Task Without_a_time_an_entry_is_of_now()
    {
        await using var bench = await ServerBench.Start();
        await bench.Enter("""{"kind":"mow","hours":0.5}""");
        var entry = JsonNode.Parse(await bench.Machine.GetStringAsync("/book.json", TestContext.Current.CancellationToken))!["book"]!["entries"]![0]!["entry"]!;
        Assert.Equal(bench.Time.Now, DateTimeOffset.Parse((string)entry["at"]!, System.Globalization.CultureInfo.InvariantCulture));
    }

    [Fact]
    public async Task Another_programs_entry_is_seen_with_the_next_question_and_told()
    {
        await using var bench = await ServerBench.Start(o => o with { TimeOfTheBook = true }, [Lines.Line(0), Lines.Line(2)]);
        var before = await bench.Machine.GetStringAsync("/steel.json", TestContext.Current.CancellationToken);
        Assert.Equal(before, await bench.Machine.GetStringAsync("/steel.json", TestContext.Current.CancellationToken));
        using var events = await bench.Machine.GetAsync("/events", HttpCompletionOption.ResponseHeadersRead, TestContext.Current.CancellationToken);
        using var reader = new StreamReader(await events.Content.ReadAsStreamAsync(TestContext.Current.CancellationToken));
        Assert.Equal("text/event-stream", events.Content.Headers.ContentType!.MediaType);
        while (await reader.ReadLineAsync(TestContext.Current.CancellationToken) != ": at 2")
        {
        }
        using (var other = BookFile.Open(bench.Book))
        {
            Assert.Empty(EntryReader.Read(Lines.Line(3), EntryContext.Whole, out var entry));
            Assert.Equal(AppendResult.Added, other.Append(entry!));
        }
        var after = await bench.Machine.GetStringAsync("/steel.json", TestContext.Current.CancellationToken);
        Assert.NotEqual(before, after);
        var told = new List<string>();
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        patience.CancelAfter(TimeSpan.FromSeconds(20));
        while (!told.Contains("data: {\"seq\":3}")) told.Add((await reader.ReadLineAsync(patience.Token))!);
        Assert.Contains("event: changed", told);
        Assert.Contains("id: 3", told);
    }

    [Theory]
    [InlineData("/events?seen=1", null)]
    [InlineData("/events?seen=2", "1")]
    public async Task Who_has_seen_another_state_of_the_book_is_told_at_once(string path, string? last)
    {
        await using var bench = await ServerBench.Start(entries: [Lines.Line(0), Lines.Line(2)]);
        using var request = new HttpRequestMessage(HttpMethod.Get, path);
        if (last is not null) request.Headers.Add("Last-Event-ID", last);
        using var events = await bench.Machine.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, TestContext.Current.CancellationToken);
        using var reader = new StreamReader(await events.Content.ReadAsStreamAsync(TestContext.Current.CancellationToken));
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        patience.CancelAfter(TimeSpan.FromSeconds(5));
        while (await reader.ReadLineAsync(patience.Token) != "data: {\"seq\":2}")
        {
        }
    }

    [Fact]
    public async Task Another_programs_entry_is_told_though_nobody_asks()
    {
        await using var bench = await ServerBench.Start(entries: [Lines.Line(0)]);
        using var request = new HttpRequestMessage(HttpMethod.Get, "/events");
        using var events = await bench.Machine.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, TestContext.Current.CancellationToken);
        using var reader = new StreamReader(await events.Content.ReadAsStreamAsync(TestContext.Current.CancellationToken));
        await reader.ReadLineAsync(TestContext.Current.CancellationToken);
        using (var other = BookFile.Open(bench.Book))
        {
            EntryReader.Read(Lines.Line(2), EntryContext.Whole, out var entry);
            other.Append(entry!);
        }
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        patience.CancelAfter(TimeSpan.FromSeconds(20));
        while (await reader.ReadLineAsync(patience.Token) != "data: {\"seq\":2}")
        {
        }
    }

    [Fact]
    public async Task Another_programs_weather_changes_the_turf()
    {
        await using var bench = await ServerBench.Start(o => o with { TimeOfTheBook = true }, Lines.All);
        var before = await bench.Machine.GetStringAsync("/turf.json", TestContext.Current.CancellationToken);
        using (var other = BookFile.Open(bench.Book))
        {
            var weather = """{"v":1,"id":"019de28d-3c00-7000-8000-00000000ffff","at":"2026-06-01T20:00:00+00:00","kind":"weather","area":"green","date":"2026-06-01","source":"own","tMinC":2,"tMaxC":31,"rainMm":0}""";
            Assert.Empty(EntryReader.Read(weather, EntryContext.Whole, out var entry));
            Assert.Equal(AppendResult.Added, other.Append(entry!));
        }
        Assert.NotEqual(before, await bench.Machine.GetStringAsync("/turf.json", TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task The_book_is_read_in_pieces_and_by_kind()
    {
        await using var bench = await ServerBench.Start(entries: Lines.All.Concat(Enumerable.Range(100, 7).Select(Lines.Mow)));
        var found = new List<string>();
        var after = "0";
        do
        {
            var slice = JsonNode.Parse(await bench.Machine.GetStringAsync($"/book.json?after={after}&limit=4", TestContext.Current.CancellationToken))!["book"]!;
            Assert.InRange(slice["entries"]!.AsArray().Count, 1, 4);
            Assert.Equal(Lines.Count + 7, (int)slice["last"]!);
            found.AddRange(slice["entries"]!.AsArray().Select(e => (string)e!["entry"]!["id"]!));
            after = slice["next"]?.ToString();
        }
        while (after is not null);
        Assert.Equal(Lines.Count + 7, found.Distinct().Count());
        Assert.Equal(Lines.Count + 7, found.Count);
        var mown = JsonNode.Parse(await bench.Machine.GetStringAsync("/book.json?kind=mow&limit=5", TestContext.Current.CancellationToken))!["book"]!;
        Assert.Equal(5, mown["entries"]!.AsArray().Count(e => (string)e!["entry"]!["kind"]! == "mow"));
        var rest = JsonNode.Parse(await bench.Machine.GetStringAsync($"/book.json?kind=mow&after={mown["next"]}", TestContext.Current.CancellationToken))!["book"]!;
        Assert.Equal((3, null), (rest["entries"]!.AsArray().Count, rest["next"]));
    }

    [Theory]
    [InlineData("?limit=0")]
    [InlineData("?limit=1001")]
    [InlineData("?after=-1")]
    [InlineData("?after=x")]
    [InlineData("?kind=mown")]
    public async Task What_cannot_be_asked_of_the_book_is_said(string query)
    {
        await using var bench = await ServerBench.Start();
        var answer = await bench.Machine.GetAsync("/book.json" + query, TestContext.Current.CancellationToken);
        Assert.Equal(System.Net.HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal("bad-value", (string)JsonNode.Parse(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken))!["error"]!["code"]!);
    }

    private static async Task<List<JsonNode>> Answers(HttpResponseMessage answer) =>
        [.. (await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => JsonNode.Parse(l)!)];
}
