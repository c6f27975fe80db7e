using System.IO.Compression;
using System.Text.RegularExpressions;
using Xunit;

namespace Closemown.Tests.Web;

/// <summary>What every answer tells the browser.</summary>
public sealed class HeaderTests
{
    private const string Policy =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; form-action 'self'; manifest-src 'self'; worker-src 'self'; base-uri 'none'; frame-ancestors 'none'";

    [Theory]
    [InlineData("/")]
    [InlineData("/today.json")]
    [InlineData("/health")]
    [InlineData("/openapi.json")]
    [InlineData("/nothing-here")]
    [InlineData("/site.css")]
    public async Task Every_answer_forbids_what_is_not_needed(string path)
    {
        await using var bench = await ServerBench.Start();
        var answer = await bench.Machine.GetAsync(path, TestContext.Current.CancellationToken);
        string? Said(string name) => answer.Headers.TryGetValues(name, out var v) ? string.Join(", ", v) : null;
        Assert.Equal(Policy, Said("Content-Security-Policy"));
        Assert.Equal(("nosniff", "same-origin", "same-origin", "same-origin"), (Said("X-Content-Type-Options"), Said("Referrer-Policy"), Said("Cross-Origin-Opener-Policy"), Said("Cross-Origin-Resource-Policy")));
        Assert.Contains("geolocation=()", Said("Permissions-Policy"), StringComparison.Ordinal);
        Assert.Null(Said("Server"));
        Assert.Null(Said("X-Powered-By"));
        if (path != "/site.css") Assert.Equal("no-store", Said("Cache-Control"));
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/today.json")]
    public async Task A_page_comes_packed_where_the_browser_can_unpack_it(string path)
    {
        await using var bench = await ServerBench.Start(entries: Lines.All);
        using var asked = new HttpRequestMessage(HttpMethod.Get, path);
        asked.Headers.AcceptEncoding.ParseAdd("br");
        var packed = await bench.Machine.SendAsync(asked, TestContext.Current.CancellationToken);
        Assert.Equal(["br"], packed.Content.Headers.ContentEncoding);
        await using var unpacked = new BrotliStream(await packed.Content.ReadAsStreamAsync(TestContext.Current.CancellationToken), CompressionMode.Decompress);
        using var reader = new StreamReader(unpacked);
        var plain = await bench.Machine.GetStringAsync(path, TestContext.Current.CancellationToken);
        Assert.Equal(Regex.Replace(plain, "name=\"form\" value=\"[^\"]*\"", ""), Regex.Replace(await reader.ReadToEndAsync(TestContext.Current.CancellationToken), "name=\"form\" value=\"[^\"]*\"", ""));
    }

    [Fact]
    public async Task An_asset_by_its_fingerprint_is_kept_and_the_page_names_it_so()
    {
        await using var bench = await ServerBench.Start(entries: Lines.All);
        var page = await bench.Machine.GetStringAsync("/", TestContext.Current.CancellationToken);
        var asset = Regex.Match(page, "href=\"(/site\\.[a-z0-9]+\\.css)\"").Groups[1].Value;
        var answer = await bench.Machine.GetAsync(asset, TestContext.Current.CancellationToken);
        Assert.True(answer.IsSuccessStatusCode, asset);
        Assert.Equal(TimeSpan.FromDays(365), answer.Headers.CacheControl!.MaxAge);
        Assert.Contains("immutable", answer.Headers.CacheControl.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_page_holds_no_script_and_no_style_of_its_own_which_the_policy_would_stop()
    {
        await using var bench = await ServerBench.Start(o => o with { Lan = true, PlainHttp = true }, Lines.All);
        using var device = bench.Device();
        foreach (var page in new[] { await bench.Machine.GetStringAsync("/", TestContext.Current.CancellationToken), await device.GetStringAsync("/pair", TestContext.Current.CancellationToken) })
        {
            Assert.Contains("<h1>", page, StringComparison.Ordinal);
            Assert.DoesNotMatch("<style|<script(?![^>]* src=)|\\sstyle=|\\son[a-z]+=", page);
        }
    }

    [Fact]
    public async Task The_first_page_says_what_today_says()
    {
        await using var bench = await ServerBench.Start(entries: Lines.All);
        var today = System.Text.Json.Nodes.JsonNode.Parse(await bench.Machine.GetStringAsync("/today.json", TestContext.Current.CancellationToken))!;
        var say = (string)today["today"]!["now"]!["say"]!;
        Assert.NotEmpty(say);
        Assert.Contains(say, System.Net.WebUtility.HtmlDecode(await bench.Machine.GetStringAsync("/", TestContext.Current.CancellationToken)), StringComparison.Ordinal);
    }
}
