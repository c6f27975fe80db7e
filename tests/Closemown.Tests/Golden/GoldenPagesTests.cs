using System.Net;
using System.Text.RegularExpressions;
using Closemown.Tests.Web;
using Xunit;

namespace Closemown.Tests.Golden;

/// <summary>What the pages of the demo book say, as on record.</summary>
public sealed partial class GoldenPagesTests
{
    [Theory]
    [InlineData("today", "/")]
    [InlineData("steel", "/steel")]
    [InlineData("bench", "/bench")]
    [InlineData("height", "/height")]
    [InlineData("turf", "/turf")]
    [InlineData("plan", "/plan")]
    [InlineData("after", "/after")]
    [InlineData("look", "/look")]
    [InlineData("book", "/book")]
    [InlineData("card", "/card")]
    [InlineData("score", "/score")]
    [InlineData("new", "/new")]
    public async Task A_page_of_the_demo_says_what_is_on_record(string name, string path)
    {
        // Half an hour after the last entry of the demo.
        await using var bench = await ServerBench.Start(entries: GoldenAnswersTests.Demo, now: new(2026, 8, 22, 8, 5, 0, TimeSpan.Zero));
        using var answer = await bench.Machine.GetAsync(path, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        GoldenFile.Holds($"demo/pages/{name}.txt", Said(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)));
    }

    /// <summary>The text of a page, a line for each piece.</summary>
    private static string Said(string page)
    {
        var text = Tag().Replace(Unseen().Replace(page, ""), "\n");
        return string.Join('\n', WebUtility.HtmlDecode(text).Split('\n').Select(l => Blank().Replace(l, " ").Trim()).Where(l => l.Length > 0));
    }

    [GeneratedRegex("<(script|style)[^>]*>.*?</\\1>", RegexOptions.Singleline)]
    private static partial Regex Unseen();

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tag();

    [GeneratedRegex("\\s+")]
    private static partial Regex Blank();
}
