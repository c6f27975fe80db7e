using System.Net;
using System.Text.Json.Nodes;
using Xunit;

namespace Closemown.Tests.Web;

/// <summary>A visitor's own words and units, on their device only.</summary>
public sealed class LookTests
{
    private static readonly (string, string)[] American = [("words", "us"), ("gap", "thou"), ("height", "fraction"), ("decimal", "point"), ("theme", "dark"), ("stand", "front"), ("back", "/look")];
    private static readonly (string, string)[] Comma = [("words", "uk"), ("gap", "hundredth"), ("height", "mm"), ("decimal", "comma"), ("theme", "light"), ("stand", "upside-down"), ("back", "/look")];

    [Fact]
    public async Task What_is_chosen_is_kept_on_the_device_and_goes_back_where_it_came_from()
    {
        await using var bench = await ServerBench.Start();
        using var visitor = new Visitor(bench);
        using var answer = await visitor.Send("/look", false, American);
        Assert.Equal((HttpStatusCode.SeeOther, "/look"), (answer.StatusCode, answer.Headers.Location!.OriginalString));
        var cookie = Assert.Single(answer.Headers.GetValues("Set-Cookie"), c => c.StartsWith("closemown-look=", StringComparison.Ordinal));
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(["us", "thou", "fraction", "point", "dark", "front"], Checked(await visitor.Page("/look")));
        Assert.Contains("<html lang=\"en\" data-theme=\"dark\">", await visitor.Page("/"), StringComparison.Ordinal);
        using var other = new Visitor(bench);
        Assert.Contains("<html lang=\"en\">", await other.Page("/"), StringComparison.Ordinal);
        Assert.Equal(["us", "um", "mm", "point", "system", "behind"], Checked(await other.Page("/look")));
    }

    [Fact]
    public async Task What_is_typed_is_read_as_the_visitor_writes_numbers()
    {
        await using var bench = await ServerBench.Start();
        using var visitor = new Visitor(bench);
        using (await visitor.Send("/look", false, Comma)) { }
        var answer = await visitor.Enter(("kind", "canopy"), ("area", "green"), ("mm", "5,5"), ("when", "after"));
        Assert.Equal("green stands 5,5 mm high, after mowing", (string)answer["said"]!);
        using var other = new Visitor(bench);
        Assert.False((bool)(await other.Enter(("kind", "gauge"), ("unit", "mower"), ("leftMm", "5,5")))["ok"]!);
    }

    [Fact]
    public async Task Sentences_come_in_the_visitors_words_and_programs_get_theirs()
    {
        await using var bench = await ServerBench.Start(entries: Lines.All);
        using var american = new Visitor(bench);
        using var comma = new Visitor(bench);
        using (await american.Send("/look", false, American)) { }
        using (await comma.Send("/look", false, Comma)) { }
        var json = await american.Page("/today.json");
        Assert.Equal(await comma.Page("/today.json"), json);
        var pages = (Usual: WebUtility.HtmlDecode(await new Visitor(bench).Page("/")), American: WebUtility.HtmlDecode(await american.Page("/")), Comma: WebUtility.HtmlDecode(await comma.Page("/")));
        var sentences = Sentences(JsonNode.Parse(json)!["today"]!).Where(s => pages.Usual.Contains(s, StringComparison.Ordinal)).ToList();
        Assert.NotEmpty(sentences);
        Assert.Contains(sentences, s => !pages.American.Contains(s, StringComparison.Ordinal) || !pages.Comma.Contains(s, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("")]
    [InlineData("words=uk&words=us&gap")]
    [InlineData("gap=ell&height=../..&decimal=;&theme=<script>&stand=behind=front")]
    [InlineData("%00%ff%fe")]
    [InlineData("=&=&=&&&")]
    public async Task Rubbish_in_the_cookie_is_the_programs_own_settings(string rubbish)
    {
        await using var bench = await ServerBench.Start(o => o with { Gap = "thou" });
        foreach (var cookie in new[] { rubbish, rubbish + new string('x', 3000) })
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, "/look");
            request.Headers.TryAddWithoutValidation("Cookie", "closemown-look=" + cookie);
            using var answer = await bench.Machine.SendAsync(request, TestContext.Current.CancellationToken);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            var page = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
            Assert.Equal(["thou", "mm", "point", "system", "behind"], Checked(page).Skip(1));
            Assert.DoesNotContain("<script>", page, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_choice_that_is_none_is_not_kept_and_a_form_without_token_changes_nothing()
    {
        await using var bench = await ServerBench.Start();
        using var visitor = new Visitor(bench);
        using (await visitor.Send("/look", false, ("theme", "<script>"), ("gap", "thou"), ("colour", "red"))) { }
        Assert.Equal(["us", "thou", "mm", "point", "system", "behind"], Checked(await visitor.Page("/look")));
        using var content = new FormUrlEncodedContent([KeyValuePair.Create("gap", "um")]);
        using var answer = await visitor.Client.PostAsync("/look", content, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal("thou", Checked(await visitor.Page("/look"))[1]);
    }

    private static List<string> Checked(string page) =>
        [.. System.Text.RegularExpressions.Regex.Matches(page, "value=\"([^\"]*)\" checked").Select(m => m.Groups[1].Value)];

    private static IEnumerable<string> Sentences(JsonNode? node) => node switch
    {
        JsonObject o => o.SelectMany(p => Sentences(p.Value)),
        JsonArray a => a.SelectMany(Sentences),
        JsonValue v when v.TryGetValue<string>(out var s) && s.Contains(' ', StringComparison.Ordinal) => [s],
        _ => [],
    };
}
