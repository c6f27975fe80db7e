using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json.Nodes;
using Closemown.Serving;
using Xunit;

namespace Closemown.Tests.Web;

/// <summary>What is more than is taken, is refused before it costs anything.</summary>
public sealed class LimitTests
{
    private static ServeOptions Small(ServeOptions o) => o with { Limits = new ServeLimits { RequestBytes = 2000, RequestLines = 3, RequestsPerSecond = 1000 } };

    [Fact]
    public async Task Too_large_a_body_is_refused_whether_its_length_is_told_or_not()
    {
        await using var bench = await ServerBench.Start(Small);
        var body = Encoding.UTF8.GetBytes(new string(' ', 2001));
        foreach (var (path, type) in new[] { ("/entries", "application/jsonl"), ("/ask", "application/json") })
        {
            foreach (var told in new[] { true, false })
            {
                using var content = new StreamContent(new MemoryStream(body));
                content.Headers.ContentType = new MediaTypeHeaderValue(type);
                using var request = new HttpRequestMessage(HttpMethod.Post, path) { Content = content };
                if (!told) request.Headers.TransferEncodingChunked = true;
                var answer = await bench.Machine.SendAsync(request, TestContext.Current.CancellationToken);
                Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
            }
        }
    }

    [Fact]
    public async Task Too_many_lines_are_refused_before_one_enters()
    {
        await using var bench = await ServerBench.Start(Small);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, (await bench.Enter(string.Join('\n', Enumerable.Range(0, 4).Select(Lines.Mow)))).StatusCode);
        Assert.Equal(0, bench.Entries());
        // Blank lines are none.
        Assert.Equal(HttpStatusCode.OK, (await bench.Enter("\n \r\n" + string.Join("\n\n\r\n", Enumerable.Range(0, 3).Select(Lines.Mow)) + "\n\n\n")).StatusCode);
        Assert.Equal(3, bench.Entries());
    }

    [Fact]
    public async Task Where_the_length_was_not_told_the_answer_ends_with_the_refusal()
    {
        await using var bench = await ServerBench.Start(Small);
        using var content = new StreamContent(new MemoryStream(Encoding.UTF8.GetBytes(string.Join('\n', Enumerable.Range(0, 5).Select(Lines.Mow)))));
        content.Headers.ContentType = new MediaTypeHeaderValue("application/jsonl");
        using var request = new HttpRequestMessage(HttpMethod.Post, "/entries") { Content = content };
        request.Headers.TransferEncodingChunked = true;
        var answer = await bench.Machine.SendAsync(request, TestContext.Current.CancellationToken);
        var lines = (await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => JsonNode.Parse(l)!).ToList();
        Assert.Equal([true, true, true, false], lines.Select(l => (bool)l["ok"]!));
        Assert.Equal("too-large", (string)lines[3]["error"]!["code"]!);
        Assert.Equal(3, bench.Entries());
    }

    [Fact]
    public async Task Too_fast_a_device_is_told_to_wait_and_goes_on_after()
    {
        await using var bench = await ServerBench.Start(o => o with { Limits = new ServeLimits { RequestsPerSecond = 5 } });
        var answers = await Task.WhenAll(Enumerable.Range(0, 40).Select(_ => bench.Machine.GetAsync("/health", TestContext.Current.CancellationToken)));
        var refused = answers.Where(a => a.StatusCode == HttpStatusCode.TooManyRequests).ToList();
        // Ten may come at once; a few more are let through while they do.
        Assert.InRange(refused.Count, 15, 30);
        Assert.All(refused, r => Assert.InRange(r.Headers.RetryAfter!.Delta!.Value.TotalSeconds, 1, 5));
        Assert.Equal("too-fast", (string)JsonNode.Parse(await refused[0].Content.ReadAsStringAsync(TestContext.Current.CancellationToken))!["error"]!["code"]!);
        await Task.Delay(refused[0].Headers.RetryAfter!.Delta!.Value, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.OK, (await bench.Machine.GetAsync("/health", TestContext.Current.CancellationToken)).StatusCode);
    }
}
