using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using Closemown.Book;
using Closemown.Entries;
using Xunit;

namespace Closemown.Tests.Web;

/// <summary>Entering by forms: what is taken, what is refused, and that nothing typed is lost.</summary>
public sealed class EnterTests
{
    private const string Id = "01900000-0000-7000-8000-00000000a001";
    private static readonly (string, string)[] Mown = [("kind", "mow"), ("unit", "mower"), ("area", "green"), ("hours", "20 min"), ("at", "2026-07-01T08:30:00+01:00"), ("id", Id), ("back", "/look?a=1")];

    private static Entry Last(ServerBench bench)
    {
        using var book = BookFile.Open(bench.Book, new BookOptions { ReadOnly = true });
        return book.ReadAll()[^1].Entry;
    }

    [Fact]
    public async Task Without_script_it_is_written_down_and_goes_back_where_it_came_from()
    {
        await using var bench = await ServerBench.Start();
        using var visitor = new Visitor(bench);
        var (status, _, went) = await visitor.Write([.. Mown, ("note", "dry"), ("by", "")]);
        Assert.Equal((HttpStatusCode.SeeOther, $"/look?a=1&written={Id}"), (status, went));
        var entry = Last(bench);
        Assert.Equal((20 / 60.0, "20 min", "dry", null), (entry[MowEntry.Hours], entry.Typed["hours"], entry.Note, entry.By));
        Assert.Equal(new DateTimeOffset(2026, 7, 1, 8, 30, 0, TimeSpan.FromHours(1)), entry.At);
    }

    [Fact]
    public async Task With_script_the_answer_is_that_of_the_pipe_and_says_the_entry_in_words()
    {
        await using var bench = await ServerBench.Start();
        using var visitor = new Visitor(bench);
        var answer = await visitor.Enter(Mown);
        Assert.Equal((true, Id, "green mown for 20 min", "/look?a=1"), ((bool)answer["ok"]!, (string)answer["id"]!, (string)answer["said"]!, (string)answer["back"]!));
        var read = await visitor.Enter(("kind", "paper-cut"), ("unit", "mower"), ("left", "cuts"), ("centre", "cuts"), ("right", "folds"));
        Assert.Equal("paper-cut: left cuts, center cuts, right folds", (string)read["said"]!);
        Assert.InRange((double)read["surprise"]!, 0, 1);
        Assert.Equal(3, read["surpriseAt"]!.AsObject().Count);
    }

    [Fact]
    public async Task The_same_id_sent_twice_is_one_entry()
    {
        await using var bench = await ServerBench.Start();
        using var visitor = new Visitor(bench);
        for (var i = 0; i < 2; i++) Assert.True((bool)(await visitor.Enter(Mown))["ok"]!);
        Assert.Equal(1, bench.Entries());
        Assert.Equal("conflict", (string)(await visitor.Enter([.. Mown, ("passes", "2")]))["error"]!["code"]!);
        Assert.Equal(1, bench.Entries());
    }

    [Fact]
    public async Task In_an_invented_book_the_visitors_clock_is_nothing_and_twice_is_still_once()
    {
        await using var bench = await ServerBench.Start(o => o with { TimeOfTheBook = true }, [Lines.Mow(1)]);
        using var visitor = new Visitor(bench);
        for (var i = 0; i < 2; i++) Assert.True((bool)(await visitor.Enter([.. Mown.Where(m => m.Item1 != "at"), ("at", $"2030-01-01T0{i}:00:00Z")]))["ok"]!);
        Assert.Equal(2, bench.Entries());
        Assert.Equal(EntryReader.Read(Lines.Mow(1), new EntryContext { NewId = t => EntryIds.Make(t, 0, 0) }, out var before) is [] ? before!.At.AddMinutes(1) : default, Last(bench).At);
    }

    [Fact]
    public async Task Lists_stations_and_units_of_bare_numbers_are_read()
    {
        await using var bench = await ServerBench.Start();
        using var visitor = new Visitor(bench);
        Assert.True((bool)(await visitor.Enter(("kind", "wish"), ("area", "green"), ("cutMm", "0.2"), ("cutMm.in", "in"), ("weekdays", "tue"), ("weekdays", "fri"), ("fixtures", "2026-08-01"), ("fixtures", "8 August")))["ok"]!);
        var wish = Last(bench);
        Assert.Equal(5.08, wish[WishEntry.CutMm]!.Value, 9);
        Assert.Equal("0.2 in", wish.Typed["cutMm"]);
        Assert.Equal(["tue", "fri"], wish[WishEntry.Weekdays]);
        Assert.Equal(["2026-08-01", "2026-08-08"], wish[WishEntry.Fixtures]);
        Assert.True((bool)(await visitor.Enter(("kind", "feeler"), ("unit", "mower"), ("left.goUm", "1"), ("left.goUm.in", "thou"), ("left.noGoUm", "2 thou"), ("right.noGoUm", "50"), ("blade", "3")))["ok"]!);
        Assert.Equal((25.4, 50.8), (Last(bench)[FeelerEntry.Left]!.GoUm!.Value, Last(bench)[FeelerEntry.Left]!.NoGoUm!.Value));
        Assert.Equal((null, 50.0), (Last(bench)[FeelerEntry.Right]!.GoUm, Last(bench)[FeelerEntry.Right]!.NoGoUm!.Value));
        Assert.True((bool)(await visitor.Enter(("kind", "canopy"), ("area", "green"), ("mm", "5"), ("mm", "5.5"), ("mm", ""), ("when", "after")))["ok"]!);
        Assert.Equal([5, 5.5], Last(bench)[CanopyEntry.Mm]);
        Assert.True((bool)(await visitor.Enter(("kind", "look"), ("area", "green"), ("frost", "on"), ("wet", "no")))["ok"]!);
        Assert.Equal((true, false), (Last(bench)[LookEntry.Frost], Last(bench)[LookEntry.Wet]));
        Assert.True((bool)(await visitor.Enter(("kind", "soil-test"), ("area", "green"), ("P", "20"), ("K", "60 mg/kg")))["ok"]!);
        Assert.Equal("""{"K":60,"P":20}""", "{" + string.Join(',', Last(bench).Others.Select(o => $"\"{o.Key}\":{o.Value}")) + "}");
    }

    [Fact]
    public async Task A_form_without_its_token_writes_nothing_and_loses_nothing()
    {
        await using var bench = await ServerBench.Start();
        using var visitor = new Visitor(bench);
        foreach (var token in (string?[])[null, "made-up"])
        {
            using var content = new FormUrlEncodedContent(Mown.Append(("note", "typed in the shed")).Append(("form", token ?? "")).Select(f => KeyValuePair.Create(f.Item1, f.Item2)));
            using var answer = await visitor.Client.PostAsync("/enter", content, TestContext.Current.CancellationToken);
            Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
            var page = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
            Assert.Contains("typed in the shed", page, StringComparison.Ordinal);
            Assert.Contains("value=\"20 min\"", page, StringComparison.Ordinal);
        }
        Assert.Equal(0, bench.Entries());
    }

    [Theory]
    [InlineData("Sec-Fetch-Site", "cross-site")]
    [InlineData("Sec-Fetch-Site", "same-site")]
    [InlineData("Origin", "https://attacker.example")]
    public async Task A_page_of_another_site_writes_nothing_also_with_a_token(string header, string value)
    {
        await using var bench = await ServerBench.Start();
        using var visitor = new Visitor(bench);
        foreach (var path in (string[])["/enter", "/look"])
        {
            using var request = new HttpRequestMessage(HttpMethod.Post, path) { Content = new FormUrlEncodedContent(Mown.Append(("form", await visitor.Token())).Select(f => KeyValuePair.Create(f.Item1, f.Item2))) };
            request.Headers.Add(header, value);
            using var answer = await visitor.Client.SendAsync(request, TestContext.Current.CancellationToken);
            Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        }
        using var token = new HttpRequestMessage(HttpMethod.Get, "/form-token");
        token.Headers.Add(header, value);
        Assert.Equal(HttpStatusCode.Forbidden, (await visitor.Client.SendAsync(token, TestContext.Current.CancellationToken)).StatusCode);
        Assert.Equal(0, bench.Entries());
    }

    [Fact]
    public async Task A_token_that_was_fetched_is_good_for_a_form()
    {
        await using var bench = await ServerBench.Start();
        using var visitor = new Visitor(bench);
        var token = (string)JsonNode.Parse(await visitor.Page("/form-token"))!["form"]!;
        using var content = new FormUrlEncodedContent(Mown.Append(("form", token)).Select(f => KeyValuePair.Create(f.Item1, f.Item2)));
        using var answer = await visitor.Client.PostAsync("/enter", content, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
    }

    [Theory]
    [InlineData("//elsewhere.example/")]
    [InlineData("https://elsewhere.example/")]
    [InlineData("/\\elsewhere.example")]
    [InlineData("\\\\elsewhere.example")]
    [InlineData("javascript:alert(1)")]
    [InlineData("/\t/elsewhere.example")]
    [InlineData("/ok\r\nSet-Cookie: a=b")]
    [InlineData("look")]
    public async Task It_goes_back_nowhere_but_to_this_server(string back)
    {
        await using var bench = await ServerBench.Start();
        using var visitor = new Visitor(bench);
        var (status, page, went) = await visitor.Write([.. Mown.Where(m => m.Item1 != "back"), ("back", back)]);
        Assert.Equal((HttpStatusCode.BadRequest, null), (status, went));
        Assert.Contains("value=\"20 min\"", page, StringComparison.Ordinal);
        Assert.DoesNotContain("elsewhere.example", page, StringComparison.Ordinal);
        Assert.Equal("back", (string)(await visitor.Enter([.. Mown.Where(m => m.Item1 != "back"), ("back", back)]))["error"]!["field"]!);
        using var look = await visitor.Send("/look", false, ("back", back));
        Assert.Equal(HttpStatusCode.BadRequest, look.StatusCode);
        Assert.Equal(0, bench.Entries());
    }

    [Fact]
    public async Task A_fault_page_shows_all_that_was_typed_the_fault_at_its_field_and_what_may_have_been_meant()
    {
        await using var bench = await ServerBench.Start();
        using var visitor = new Visitor(bench);
        (string, string)[] typed = [("kind", "unit"), ("unit", "mower"), ("clickUm", "0.007 in"), ("blades", "ten"), ("note", "from the manual, \"page 7\""), ("back", "/look")];
        var (status, page, _) = await visitor.Write(typed);
        Assert.Equal(HttpStatusCode.BadRequest, status);
        Assert.Contains("value=\"0.007 in\"", page, StringComparison.Ordinal);
        Assert.Contains("value=\"ten\"", page, StringComparison.Ordinal);
        Assert.Contains("from the manual, &quot;page 7&quot;", page, StringComparison.Ordinal);
        Assert.Matches("name=\"clickUm\"[^>]*aria-invalid=\"true\"[^>]*aria-describedby=\"fault-clickUm\"", page);
        Assert.Matches("id=\"fault-clickUm\" role=\"alert\"", page);
        Assert.Matches("name=\"confirm\" value=\"clickUm\"", page);
        Assert.Equal(0, bench.Entries());
        var choice = page.Split("name=\"instead\" value=\"")[1].Split('"')[0];
        Assert.StartsWith("clickUm=17.78", choice, StringComparison.Ordinal);
        var (after, _, went) = await visitor.Write([.. typed.Where(t => t.Item1 != "blades"), ("blades", "10"), ("instead", choice)]);
        Assert.Equal(HttpStatusCode.SeeOther, after);
        Assert.StartsWith("/look?written=", went, StringComparison.Ordinal);
        Assert.Equal((17.78, "0.007 in"), (Last(bench)[UnitEntry.ClickUm]!.Value, Last(bench).Typed["clickUm"]));
    }

    [Fact]
    public async Task What_is_unusual_is_taken_where_the_person_stands_by_it()
    {
        await using var bench = await ServerBench.Start();
        using var visitor = new Visitor(bench);
        (string, string)[] typed = [("kind", "unit"), ("unit", "mower"), ("clickUm", "177.8")];
        var refused = await visitor.Enter(typed);
        Assert.Equal(("implausible", "clickUm"), ((string)refused["error"]!["code"]!, (string)refused["error"]!["field"]!));
        Assert.Equal(["instead", "written", "reading"], refused["error"]!["choices"]![0]!.AsObject().Select(c => c.Key));
        Assert.True((bool)(await visitor.Enter([.. typed, ("confirm", "clickUm")]))["ok"]!);
        Assert.Equal(["clickUm"], Last(bench).Confirmed);
    }

    [Theory]
    [InlineData("kind", "mown", "unknown-kind")]
    [InlineData("hours", "soon", "bad-value")]
    [InlineData("hours", "", "missing")]
    [InlineData("id", "7", "bad-value")]
    [InlineData("at", "yesterday", "bad-value")]
    [InlineData("turns", "3", "bad-value")]
    [InlineData("unit", "xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx", "bad-value")]
    public async Task A_fault_names_its_field_and_enters_nothing(string field, string value, string code)
    {
        await using var bench = await ServerBench.Start();
        using var visitor = new Visitor(bench);
        (string, string)[] typed = [.. Mown.Where(m => m.Item1 != field), (field, value)];
        var error = (await visitor.Enter(typed))["error"]!;
        Assert.Equal((code, field), ((string)error["code"]!, (string)error["field"]!));
        Assert.NotEmpty((string)error["message"]!);
        Assert.NotEmpty((string)error["remedy"]!);
        Assert.Equal(HttpStatusCode.BadRequest, (await visitor.Write(typed)).Status);
        Assert.Equal(0, bench.Entries());
    }

    [Fact]
    public async Task Too_large_a_form_and_one_of_another_type_are_refused()
    {
        await using var bench = await ServerBench.Start(o => o with { Limits = o.Limits with { RequestBytes = 10_000 } });
        using var visitor = new Visitor(bench);
        using var large = await visitor.Send("/enter", true, [.. Mown, ("note", new string('x', 20_000))]);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, large.StatusCode);
        using var many = await visitor.Send("/enter", true, [.. Enumerable.Range(0, 1500).Select(i => ("a", "b"))]);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, many.StatusCode);
        using var form = new MultipartFormDataContent { { new StringContent("mow"), "kind" } };
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, (await visitor.Client.PostAsync("/enter", form, TestContext.Current.CancellationToken)).StatusCode);
        using var json = new StringContent("""{"kind":"mow"}""", Encoding.UTF8, "application/json");
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, (await visitor.Client.PostAsync("/enter", json, TestContext.Current.CancellationToken)).StatusCode);
        Assert.Equal(0, bench.Entries());
    }

    [Fact]
    public async Task A_device_that_is_not_paired_enters_nothing()
    {
        await using var bench = await ServerBench.Start(o => o with { Lan = true, PlainHttp = true });
        using var device = bench.Device();
        using var content = new FormUrlEncodedContent(Mown.Select(f => KeyValuePair.Create(f.Item1, f.Item2)));
        Assert.Equal(HttpStatusCode.Unauthorized, (await device.PostAsync("/enter", content, TestContext.Current.CancellationToken)).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await device.GetAsync("/form-token", TestContext.Current.CancellationToken)).StatusCode);
        Assert.Equal(0, bench.Entries());
    }

    [Fact]
    public async Task An_entry_is_taken_out_and_put_back()
    {
        await using var bench = await ServerBench.Start();
        using var visitor = new Visitor(bench);
        await visitor.Enter(Mown);
        var taken = await visitor.Enter(("kind", "void"), ("voids", Id));
        Assert.True((bool)taken["ok"]!);
        Assert.Contains("Taken out: green mown for 20 min, of 1 Jul 2026, 08:30.", await Notice(visitor, (string)taken["id"]!), StringComparison.Ordinal);
        var back = await visitor.Enter(("kind", "void"), ("voids", (string)taken["id"]!));
        Assert.Contains("Put back: green mown for 20 min", await Notice(visitor, (string)back["id"]!), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_page_says_what_was_written_down_and_offers_to_take_it_out()
    {
        await using var bench = await ServerBench.Start();
        using var visitor = new Visitor(bench);
        await visitor.Enter(Mown);
        var page = await visitor.Page($"/look?a=1&written={Id}");
        Assert.Contains("Written down: green mown for 20 min.", page, StringComparison.Ordinal);
        Assert.Matches($"name=\"voids\" value=\"{Id}\"", page);
        Assert.Matches("name=\"back\" value=\"/look\\?a=1\"", page);
        Assert.DoesNotContain("Written down", await visitor.Page($"/look?written={Guid.Empty}"), StringComparison.Ordinal);
        Assert.DoesNotContain("Written down", await visitor.Page("/look?written=<script>"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_reading_that_is_not_like_this_mower_is_said_to_be_so()
    {
        await using var bench = await ServerBench.Start(entries: Enumerable.Range(0, 30).Select(i => Reading(i, "cuts")));
        using var visitor = new Visitor(bench);
        var answer = await visitor.Enter(("kind", "paper-cut"), ("unit", "mower"), ("left", "folds"), ("centre", "folds"), ("right", "folds"), ("at", "2026-06-30T10:00:00Z"));
        Assert.Matches("^about 1 in [0-9]+$", (string?)answer["oddOneIn"] ?? answer.ToJsonString());
        Assert.Contains($"Not like this mower: {(string)answer["oddOneIn"]!}.", await Notice(visitor, (string)answer["id"]!), StringComparison.Ordinal);
    }

    private static string Reading(int i, string word) =>
        $$"""{"v":1,"id":"01900000-0000-7000-8000-0000000000{{i + 16:x2}}","at":"2026-06-{{i / 2 + 1:00}}T{{8 + i % 2:00}}:00:00Z","kind":"paper-cut","unit":"mower","left":"{{word}}","centre":"{{word}}","right":"{{word}}"}""";

    private static async Task<string> Notice(Visitor visitor, string id) => WebUtility.HtmlDecode(await visitor.Page($"/look?written={id}"));
}
