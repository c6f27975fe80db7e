using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using Xunit;

namespace Closemown.Tests.Web;

/// <summary>What a page of another site can make a browser send, changes nothing and tells nothing.</summary>
public sealed class CrossSiteTests
{
    [Theory]
    [InlineData("cross-site", null)]
    [InlineData("same-site", null)]
    [InlineData(null, "null")]
    [InlineData(null, "https://attacker.example")]
    [InlineData(null, "http://127.0.0.1:1")]
    [InlineData("same-origin", "https://attacker.example")]
    public async Task A_post_of_another_site_is_refused(string? site, string? origin)
    {
        await using var bench = await ServerBench.Start();
        foreach (var (path, body, type) in new[] { ("/entries", Lines.Mow(1), "application/jsonl"), ("/entries", Lines.Mow(1), "text/plain"), ("/ask", "{\"ask\":\"today\"}", "application/json") })
        {
            var answer = await Post(bench, path, body, type, site, origin);
            Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
            Assert.Equal("cross-site", (string)JsonNode.Parse(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken))!["error"]!["code"]!);
        }
        Assert.Equal(0, bench.Entries());
    }

    [Fact]
    public async Task Its_own_page_and_a_program_are_let_through()
    {
        await using var bench = await ServerBench.Start();
        var own = bench.Server.Address.TrimEnd('/');
        Assert.Equal(HttpStatusCode.OK, (await Post(bench, "/entries", Lines.Mow(1), "application/jsonl", "same-origin", own)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await Post(bench, "/entries", Lines.Mow(2), "text/plain", "same-origin", own)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await Post(bench, "/entries", Lines.Mow(3), "application/x-ndjson", null, null)).StatusCode);
        Assert.Equal(3, bench.Entries());
    }

    [Theory]
    [InlineData("application/x-www-form-urlencoded")]
    [InlineData("multipart/form-data")]
    [InlineData("text/plain")]
    [InlineData("")]
    public async Task What_a_form_can_send_is_not_taken_for_entries_where_no_browser_says_whose_it_is(string type)
    {
        await using var bench = await ServerBench.Start();
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, (await Post(bench, "/entries", Lines.Mow(1), type, null, null)).StatusCode);
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, (await Post(bench, "/ask", "{\"ask\":\"today\"}", type, null, null)).StatusCode);
        Assert.Equal(0, bench.Entries());
    }

    [Fact]
    public async Task Plain_text_is_taken_with_a_header_that_no_form_can_send()
    {
        await using var bench = await ServerBench.Start();
        using var request = new HttpRequestMessage(HttpMethod.Post, "/entries") { Content = new StringContent(Lines.Mow(1), Encoding.UTF8, "text/plain") };
        request.Headers.Add("X-Closemown", "1");
        Assert.Equal(HttpStatusCode.OK, (await bench.Machine.SendAsync(request, TestContext.Current.CancellationToken)).StatusCode);
        Assert.Equal(1, bench.Entries());
    }

    [Theory]
    [InlineData("cross-site", "no-cors", "image", HttpStatusCode.Forbidden)]
    [InlineData("cross-site", "navigate", "iframe", HttpStatusCode.Forbidden)]
    [InlineData("same-site", "cors", "empty", HttpStatusCode.Forbidden)]
    [InlineData("cross-site", "navigate", "document", HttpStatusCode.OK)]
    [InlineData("same-origin", "cors", "empty", HttpStatusCode.OK)]
    [InlineData("none", "navigate", "document", HttpStatusCode.OK)]
    public async Task Another_site_may_link_here_and_may_not_fetch_or_embed(string site, string mode, string dest, HttpStatusCode status)
    {
        await using var bench = await ServerBench.Start();
        using var request = new HttpRequestMessage(HttpMethod.Get, "/today.json");
        request.Headers.Add("Sec-Fetch-Site", site);
        request.Headers.Add("Sec-Fetch-Mode", mode);
        request.Headers.Add("Sec-Fetch-Dest", dest);
        Assert.Equal(status, (await bench.Machine.SendAsync(request, TestContext.Current.CancellationToken)).StatusCode);
    }

    private static async Task<HttpResponseMessage> Post(ServerBench bench, string path, string body, string type, string? site, string? origin)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, path) { Content = new ByteArrayContent(Encoding.UTF8.GetBytes(body)) };
        if (type.Length > 0) request.Content.Headers.TryAddWithoutValidation("Content-Type", type);
        if (site is not null) request.Headers.Add("Sec-Fetch-Site", site);
        if (origin is not null) request.Headers.Add("Origin", origin);
        return await bench.Machine.SendAsync(request, TestContext.Current.CancellationToken);
    }
}
