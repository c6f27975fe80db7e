using Closemown.Tests.Web;
using Microsoft.Playwright;
using Xunit;

namespace Closemown.Browser.Tests;

/// <summary>From an empty book to the first paper check, and to a plan; and a card typed in.</summary>
public sealed class BeginTests(Site site)
{
    [Fact]
    public async Task A_mower_begins_with_two_touches_and_leads_to_its_first_paper_check()
    {
        await using var server = await ServerBench.Start(now: DateTimeOffset.UtcNow);
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Phone));
        await visit.Open("/");
        await FirstCheck.Begin(visit.Page);
        await FirstCheck.GoOn(visit.Page);
        Assert.Equal(1, server.Entries());
        await FirstCheck.Tell(visit.Page);
        await FirstCheck.Write(visit.Page);
        Assert.Equal(2, server.Entries());
    }

    [Fact]
    public async Task What_is_told_of_a_mower_is_kept_as_typed()
    {
        await using var server = await ServerBench.Start(now: DateTimeOffset.UtcNow);
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Phone, Script: false));
        await visit.Open("/new?what=unit");
        await visit.Page.Locator("#name").FillAsync("old one");
        await visit.Page.GetByLabel("10", new() { Exact = true }).CheckAsync();
        await visit.Page.Locator("#width").FillAsync("20 in");
        await visit.Page.GetByLabel("clockwise", new() { Exact = true }).CheckAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Go on to the first paper check" }).ClickAsync();
        await visit.Page.WaitForURLAsync("**/steel?unit=old%20one#check");
        var line = await server.Machine.GetStringAsync("/book.jsonl", TestContext.Current.CancellationToken);
        foreach (var said in (string[])["\"blades\":10", "\"widthMm\":508", "\"inTurns\":\"clockwise\"", "\"widthMm\":\"20 in\"", "\"unit\":\"old one\""]) Assert.Contains(said, line, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_was_typed_stays_while_the_machine_is_out_of_reach_and_is_sent_when_it_is_back()
    {
        await using var server = await ServerBench.Start(now: DateTimeOffset.UtcNow);
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Phone));
        await visit.Open("/new?what=unit");
        await visit.Page.Locator("#name").FillAsync("old one");
        await visit.Page.Context.SetOfflineAsync(true);
        var go = visit.Page.GetByRole(AriaRole.Button, new() { Name = "Go on to the first paper check" });
        await go.ClickAsync();
        await visit.Page.GetByText("What you typed stays here").WaitForAsync();
        Assert.Equal("old one", await visit.Page.Locator("#name").InputValueAsync());
        Assert.Equal(0, server.Entries());
        await visit.Page.Context.SetOfflineAsync(false);
        await go.ClickAsync();
        await visit.Page.WaitForURLAsync("**/steel?unit=old%20one#check");
        Assert.Equal(1, server.Entries());
    }

    [Fact]
    public async Task A_fault_is_told_beside_its_field_and_nothing_is_written()
    {
        await using var server = await ServerBench.Start(now: DateTimeOffset.UtcNow);
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Phone));
        await visit.Open("/new?what=area");
        await visit.Page.Locator("#lat").FillAsync("north");
        await visit.Page.Locator("#wish").FillAsync("5 mm");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Go on to the plan" }).ClickAsync();
        await visit.Page.Locator("p.fault").WaitForAsync();
        Assert.Equal("north", await visit.Page.Locator("#lat").InputValueAsync());
        Assert.Equal(0, server.Entries());
        await visit.Page.Locator("#lat").FillAsync("51.3");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Go on to the plan" }).ClickAsync();
        await visit.Page.WaitForURLAsync("**/plan?area=green");
        Assert.Equal(2, server.Entries());
    }

    [Fact]
    public async Task A_filled_card_becomes_a_paper_check_and_a_mowing()
    {
        await using var server = await DemoServer.Start();
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Phone));
        var before = server.Entries();
        await visit.Open("/card?fill=1");
        await visit.Page.Locator("#date0").FillAsync("2026-08-20");
        await visit.Page.Locator("#hours0").FillAsync("1:30");
        await visit.Page.Locator("#paper0left").SelectOptionAsync("cuts");
        await visit.Page.Locator("#paper0right").SelectOptionAsync("folds");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Write these down" }).ClickAsync();
        await visit.Page.GetByText("Written down: 2 entries").WaitForAsync();
        Assert.Equal(before + 2, server.Entries());
    }

    [Fact]
    public async Task The_card_and_the_plan_with_days_off_print_on_one_sheet()
    {
        await using var visit = await site.Visit(new(ViewSize.Desktop));
        foreach (var path in (string[])["/card", "/plan?off=2026-08-25&off=2026-08-29", "/book?kind=paper-cut"])
        {
            await visit.Open(path);
            Assert.Equal(1, Paper.Sheets(await Paper.Print(visit.Page)));
        }
    }
}
