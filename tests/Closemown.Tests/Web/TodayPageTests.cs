using System.Net;
using Xunit;

namespace Closemown.Tests.Web;

/// <summary>The first page says what to do now with its cautions, and an empty book how to begin.</summary>
public sealed class TodayPageTests
{
    private static async Task<string> Page(ServerBench bench) => WebUtility.HtmlDecode(await (await bench.Machine.GetAsync("/", TestContext.Current.CancellationToken)).Content.ReadAsStringAsync(TestContext.Current.CancellationToken));

    [Fact]
    public async Task What_to_do_now_stands_with_the_caution_before_hands_go_near()
    {
        await using var bench = await ServerBench.Start();
        using var taken = (await bench.Enter("""{"kind":"paper-cut","unit":"mower","left":"folds","centre":"folds","right":"folds"}""")).EnsureSuccessStatusCode();
        var today = System.Text.Json.Nodes.JsonNode.Parse(await bench.Machine.GetStringAsync("/today.json", TestContext.Current.CancellationToken))!["today"]!["now"]!;
        var page = await Page(bench);
        Assert.Contains((string)today["say"]!, page, StringComparison.Ordinal);
        var cautions = today["cautions"]!.AsArray();
        Assert.NotEmpty(cautions);
        foreach (var caution in cautions) Assert.Contains((string)caution!, page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_empty_book_says_how_to_begin()
    {
        await using var bench = await ServerBench.Start();
        Assert.Contains("closemown new", await Page(bench), StringComparison.Ordinal);
    }
}
