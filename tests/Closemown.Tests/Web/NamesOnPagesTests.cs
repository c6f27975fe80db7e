using System.Net;
using Xunit;

namespace Closemown.Tests.Web;

/// <summary>A name with braces or quotes breaks no page.</summary>
public sealed class NamesOnPagesTests
{
    [Theory]
    [InlineData("g{b")]
    [InlineData("{reel}")]
    [InlineData("}\"'")]
    public async Task F10_F31_Every_page_shows_a_name_as_it_was_typed(string name)
    {
        var text = System.Text.Json.JsonSerializer.Serialize(name);
        await using var bench = await ServerBench.Start();
        using var taken = (await bench.Enter(string.Join('\n',
            $$"""{"kind":"gauge","at":"2026-06-29T08:00:00Z","unit":"m","leftMm":5,"rightMm":5.1}""",
            $$"""{"kind":"mow","at":"2026-06-30T09:00:00Z","unit":"m","area":{{text}},"hours":1}""",
            $$"""{"kind":"canopy","at":"2026-06-30T10:00:00Z","area":{{text}},"mm":5,"when":"after"}"""))).EnsureSuccessStatusCode();
        foreach (var path in (string[])["/", "/height", $"/height?area={Uri.EscapeDataString(name)}&cut=4", "/turf", "/plan", "/steel", "/book"])
        {
            using var answer = await bench.Machine.GetAsync(path, TestContext.Current.CancellationToken);
            Assert.True(answer.StatusCode == HttpStatusCode.OK, $"{path}: {answer.StatusCode}");
        }
        Assert.Contains(name, WebUtility.HtmlDecode(await bench.Machine.GetStringAsync("/height", TestContext.Current.CancellationToken)), StringComparison.Ordinal);
    }
}
