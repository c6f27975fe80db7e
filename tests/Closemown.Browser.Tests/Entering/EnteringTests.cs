using System.Text.RegularExpressions;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace Closemown.Browser.Tests;

/// <summary>Entries written in a browser: with script and without, right and wrong.</summary>
public sealed class EnteringTests(Site site)
{
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task An_entry_is_written_down_said_and_taken_out_again(bool script)
    {
        await using var server = await DemoServer.Start();
        var before = server.Entries();
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Phone, Script: script));
        await visit.Fill("20 min");
        await visit.Send();
        await Expect(visit.Page.Locator("[data-notice]")).ToContainTextAsync("Written down: green mown for 20 min");
        Assert.Equal(before + 1, server.Entries());
        await visit.Page.Locator("[data-notice] button").ClickAsync();
        await Expect(visit.Page.Locator("[data-notice]")).ToContainTextAsync("Taken out: green mown for 20 min");
        Assert.Equal(before + 2, server.Entries());
        visit.Own.Check();
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_slip_is_questioned_at_its_field_and_what_was_meant_is_one_press(bool script)
    {
        await using var server = await DemoServer.Start();
        var before = server.Entries();
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Phone, Script: script));
        await visit.Open("/enter?kind=unit&unit=mower");
        await visit.Type("clickUm", "0.007 in");
        await visit.Type("note", "page 7");
        await visit.Send();
        await Expect(visit.Page.Locator("[role=alert]")).ToContainTextAsync("usually");
        await Expect(visit.Page.Locator("[name=clickUm]")).ToHaveAttributeAsync("aria-invalid", "true");
        await Expect(visit.Page.Locator("[name=note]")).ToHaveValueAsync("page 7");
        Assert.Equal(before, server.Entries());
        if (script) await PageChecks.Axe(visit.Page);
        await PageChecks.Targets(visit.Page, 44);
        await visit.Page.Locator("button[name=instead]").First.ClickAsync();
        await Expect(visit.Page.Locator("[data-notice]")).ToContainTextAsync("Written down: unit");
        Assert.Equal(before + 1, server.Entries());
    }

    [Fact]
    public async Task What_is_right_although_unusual_is_ticked_and_taken()
    {
        await using var server = await DemoServer.Start();
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Phone));
        await visit.Open("/enter?kind=unit&unit=mower");
        await visit.Type("clickUm", "177");
        await visit.Send();
        await visit.Page.Locator("[name=confirm]").CheckAsync();
        await visit.Send();
        await Expect(visit.Page.Locator("[data-notice]")).ToContainTextAsync("Written down");
    }

    [Fact]
    public async Task Pressed_twice_while_it_is_being_sent_it_is_one_entry()
    {
        await using var server = await DemoServer.Start();
        var before = server.Entries();
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Desktop));
        await visit.Page.RouteAsync("**/enter", async r =>
        {
            if (r.Request.Method == "POST") await Task.Delay(700);
            await r.ContinueAsync();
        });
        await visit.Fill("25 min");
        await visit.Page.Locator("form[data-entry] button.go").DblClickAsync();
        await Expect(visit.Page.Locator("form[data-entry] button.go")).ToHaveTextAsync("Sending…");
        await visit.Page.Locator("[name=hours]").PressAsync("Enter");
        await Expect(visit.Page.Locator("[data-notice]")).ToContainTextAsync("Written down");
        await server.Holds(before + 1);
    }

    [Fact]
    public async Task A_form_that_lay_open_while_the_keys_changed_is_sent_with_a_fresh_token()
    {
        await using var server = await DemoServer.Start();
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Phone));
        await visit.Fill("25 min");
        await visit.Page.EvaluateAsync("() => document.querySelector('[name=form]').value = 'old'");
        await visit.Send();
        await Expect(visit.Page).ToHaveURLAsync(new Regex("written="));
    }
}
