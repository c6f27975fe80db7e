using System.Text;
using System.Text.Json.Nodes;
using Closemown.Pages;
using Closemown.Quantities;
using Closemown.Serving;
using Closemown.Tests.Book;
using Closemown.Web;
using Xunit;

namespace Closemown.Tests.Web;

/// <summary>The book as pages see it: answers kept while they hold, and no longer.</summary>
public sealed class WorkshopTests
{
    private const string Steel = """{"ask":"steel"}""";

    [Fact]
    public async Task An_answer_is_given_again_until_the_book_changes()
    {
        using var folder = new TempFolder();
        var time = new StillTime(new DateTimeOffset(2026, 6, 1, 9, 2, 0, TimeSpan.Zero));
        using var workshop = new Workshop(new ServeOptions { Book = folder.Book }, time);
        await workshop.Say(Lines.Line(3), TestContext.Current.CancellationToken);
        var first = await workshop.Ask(Steel, TestContext.Current.CancellationToken);
        Assert.Same(first, await workshop.Ask(Steel, TestContext.Current.CancellationToken));
        await workshop.Say(Lines.Line(3), TestContext.Current.CancellationToken);         // known already: nothing changes
        Assert.Same(first, await workshop.Ask(Steel, TestContext.Current.CancellationToken));
        await workshop.Say(Lines.Line(7), TestContext.Current.CancellationToken);
        var second = await workshop.Ask(Steel, TestContext.Current.CancellationToken);
        Assert.NotEqual(Encoding.UTF8.GetString(first), Encoding.UTF8.GetString(second));
    }

    [Fact]
    public async Task The_asking_time_goes_on_by_five_minutes_and_is_never_before_the_last_entry()
    {
        using var folder = new TempFolder();
        var start = new DateTimeOffset(2026, 6, 1, 9, 2, 0, TimeSpan.Zero);
        var time = new StillTime(start);
        using var workshop = new Workshop(new ServeOptions { Book = folder.Book }, time);
        Assert.Equal(start, workshop.AskedAt);
        var today = """{"ask":"today"}""";
        var first = await workshop.Ask(today, TestContext.Current.CancellationToken);
        time.Now = start.AddMinutes(2.9);
        Assert.Same(first, await workshop.Ask(today, TestContext.Current.CancellationToken));
        time.Now = start.AddMinutes(3.5);
        Assert.NotSame(first, await workshop.Ask(today, TestContext.Current.CancellationToken));
        Assert.Equal(start.AddMinutes(3), workshop.AskedAt);
        time.Now = start.AddMinutes(4);
        await workshop.Say("""{"kind":"mow","hours":1}""", TestContext.Current.CancellationToken);
        Assert.Equal(start.AddMinutes(4), workshop.AskedAt);
        time.Now = start.AddMinutes(7);
        Assert.Equal(start.AddMinutes(4), workshop.AskedAt);
        time.Now = start.AddMinutes(8);
        Assert.Equal(start.AddMinutes(8), workshop.AskedAt);
    }

    [Fact]
    public async Task A_page_appends_asks_reads_and_is_told_of_changes()
    {
        using var folder = new TempFolder();
        using var workshop = new Workshop(new ServeOptions { Book = folder.Book }, new StillTime(new DateTimeOffset(2026, 6, 1, 9, 2, 0, TimeSpan.Zero)));
        var page = new VisitorWorkshop(workshop, new VisitorLook(WritingStyle.Plain), new ServeLimits());
        var told = new List<long>();
        page.Changed += (_, e) => told.Add(e.Sequence);
        var answers = await page.Append([JsonNode.Parse(Lines.Line(0))!.AsObject(), new JsonObject { ["kind"] = "mown" }, JsonNode.Parse(Lines.Line(3))!.AsObject()], TestContext.Current.CancellationToken);
        Assert.Equal([true, false, true], answers.Select(a => (bool)a["ok"]!));
        Assert.Equal([1, 2], told);
        Assert.Equal(2, page.Sequence);
        var steel = await page.Ask(new JsonObject { ["ask"] = "steel" }, TestContext.Current.CancellationToken);
        Assert.True((bool)steel["ok"]!);
        steel.Remove("steel");                                                               // the caller's own
        Assert.NotNull((await page.Ask(new JsonObject { ["ask"] = "steel" }, TestContext.Current.CancellationToken))["steel"]);
        Assert.False((bool)(await page.Ask(JsonNode.Parse(Lines.Mow(9))!.AsObject(), TestContext.Current.CancellationToken))["ok"]!);
        Assert.Equal(2, (await page.Read(0, null, 10, TestContext.Current.CancellationToken)).Entries.Count);
    }

    [Fact]
    public async Task A_question_of_unusual_length_is_answered_and_not_kept()
    {
        using var folder = new TempFolder();
        using var workshop = new Workshop(new ServeOptions { Book = folder.Book }, new StillTime(new DateTimeOffset(2026, 6, 1, 9, 2, 0, TimeSpan.Zero)));
        var question = $$"""{"ask":"steel","aside":"{{new string('x', 600)}}"}""";
        var first = await workshop.Ask(question, TestContext.Current.CancellationToken);
        var second = await workshop.Ask(question, TestContext.Current.CancellationToken);
        Assert.Equal(Encoding.UTF8.GetString(first), Encoding.UTF8.GetString(second));
        Assert.NotSame(first, second);
    }

    [Fact]
    public async Task Many_who_ask_and_enter_at_once_all_get_their_answer()
    {
        using var folder = new TempFolder();
        using var workshop = new Workshop(new ServeOptions { Book = folder.Book }, new StillTime(new DateTimeOffset(2026, 6, 1, 9, 2, 0, TimeSpan.Zero)));
        var work = Enumerable.Range(0, 60).Select(n => Task.Run(async () => n % 3 == 0
            ? await workshop.Say(Lines.Mow(n), TestContext.Current.CancellationToken)
            : Encoding.UTF8.GetString(await workshop.Ask(Steel, TestContext.Current.CancellationToken))));
        Assert.All(await Task.WhenAll(work), a => Assert.StartsWith("{\"ok\":true", a, StringComparison.Ordinal));
        Assert.Equal(20, workshop.Stamp.Entries);
    }
}
