using Microsoft.Playwright;
using Xunit;

namespace Closemown.Browser.Tests;

/// <summary>Entries are taken out, put back and corrected; lines are brought in after a look at what would happen.</summary>
public sealed class BookTests(Site site)
{
    [Fact]
    public async Task An_entry_is_taken_out_and_put_back()
    {
        await using var server = await DemoServer.Start();
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Phone));
        var before = server.Entries();
        await visit.Open("/book?kind=mow");
        await visit.Page.Locator("ol.entries a").First.ClickAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Take it out" }).ClickAsync();
        await visit.Page.GetByText("Taken out: it does not count.").WaitForAsync();
        Assert.Equal(before + 1, server.Entries());
        await visit.Page.Locator("section.now").GetByRole(AriaRole.Button, new() { Name = "Put it back" }).ClickAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Take it out" }).WaitForAsync();
        Assert.Equal(before + 2, server.Entries());
    }

    [Fact]
    public async Task A_correction_takes_the_place_of_the_entry_at_its_own_time()
    {
        await using var server = await DemoServer.Start();
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Phone, Script: false));
        await visit.Open("/book?kind=paper-cut");
        var first = visit.Page.Locator("ol.entries a").First;
        var when = await first.Locator(".when").InnerTextAsync();
        await first.ClickAsync();
        var left = visit.Page.Locator("#c-left");
        var other = await left.InputValueAsync() == "folds" ? "cuts" : "folds";
        await left.SelectOptionAsync(other);
        await visit.Page.Locator("#c-note").FillAsync("read by the wrong blade");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Write the correction down" }).ClickAsync();
        await visit.Page.GetByText("The correction", new() { Exact = true }).ClickAsync();
        var said = await visit.Page.Locator("section.now").InnerTextAsync();
        Assert.Contains($"left {other}", said, StringComparison.Ordinal);
        Assert.Contains("read by the wrong blade", said, StringComparison.Ordinal);
        Assert.Contains(when, said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_preview_tells_the_bad_line_and_writes_nothing_until_told_to()
    {
        await using var server = await DemoServer.Start();
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Desktop));
        var before = server.Entries();
        await visit.Open("/book/import");
        await visit.Page.Locator("#lines").FillAsync(
            """
            {"v":1,"id":"019b0000-0000-7000-8000-000000000001","at":"2026-08-20T10:00:00+01:00","kind":"swath","unit":"ten-blade","left":"clean","right":"clean"}
            {"v":1,"id":"019b0000-0000-7000-8000-000000000002","at":"2026-08-20T10:00:00+01:00","kind":"swath","unit":"ten-blade","left":"torn"}
            """);
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "See first what would happen" }).ClickAsync();
        var told = await visit.Page.GetByRole(AriaRole.Status).First.InnerTextAsync();
        Assert.Contains("1 would enter", told, StringComparison.Ordinal);
        Assert.Contains("1 cannot be taken", told, StringComparison.Ordinal);
        Assert.Contains("Line 2:", told, StringComparison.Ordinal);
        Assert.Equal(before, server.Entries());
        await PageChecks.NoSideScroll(visit.Page);
        await PageChecks.Axe(visit.Page);
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Write 1 entry down" }).ClickAsync();
        await visit.Page.GetByText("1 entered").WaitForAsync();
        Assert.Equal(before + 1, server.Entries());
        visit.Own.Check();
    }

    [Fact]
    public async Task The_book_is_taken_away_whole()
    {
        await using var server = await DemoServer.Start();
        var lines = await server.Machine.GetStringAsync("/book.jsonl", TestContext.Current.CancellationToken);
        Assert.True(lines.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length >= server.Entries());
        var copy = await server.Machine.GetByteArrayAsync("/book.backup", TestContext.Current.CancellationToken);
        Assert.Equal("SQLite format 3\0"u8.ToArray(), copy[..16]);
    }

    [Fact]
    public async Task The_reasons_behind_an_advice_lead_to_their_entries()
    {
        await using var visit = await site.Visit(new(ViewSize.Phone));
        var advice = await visit.Page.APIRequest.PostAsync(new Uri(site.Address, "/ask").ToString(), new() { Headers = new Dictionary<string, string> { ["Content-Type"] = "application/json" }, Data = """{"ask":"next","unit":"ten-blade"}""" });
        var id = (await advice.JsonAsync())!.Value.GetProperty("next").GetProperty("advice").GetString()!;
        await visit.Open("/book?why=" + Uri.EscapeDataString(id));
        await PageChecks.Reads(visit.Page, ["Because", "It rests most on these entries", "What else was weighed"]);
        await PageChecks.NoSideScroll(visit.Page);
        await PageChecks.Axe(visit.Page);
        await visit.Page.Locator("ol.entries a").First.ClickAsync();
        await visit.Page.GetByText("As it is kept").WaitForAsync();
        await PageChecks.Unfold(visit.Page);
        await PageChecks.NoSideScroll(visit.Page);
        await PageChecks.Targets(visit.Page, 44);
        await PageChecks.Axe(visit.Page);
        visit.Own.Check();
    }
}
