using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace Closemown.Browser.Tests;

/// <summary>What is read and seen on the turf, entered where it is shown.</summary>
public sealed class TurfEnteringTests(Site site)
{
    [Theory]
    [InlineData("5 1/2 mm", "5.5 mm read before mowing", true)]
    [InlineData("7/32 in", "5.6 mm read before mowing", true)]
    [InlineData("7/32 in", "5.6 mm read before mowing", false)]
    public async Task A_height_typed_in_any_unit_is_noted_and_drawn(string typed, string shown, bool script)
    {
        await using var server = await DemoServer.Start();
        var before = server.Entries();
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Phone, Script: script));
        await visit.Open("/turf");
        await visit.Page.Locator("#canopy [name=mm]").First.FillAsync(typed);
        await visit.Page.Locator("#canopy button.go").ClickAsync();
        await Expect(visit.Page.Locator("[data-notice]")).ToContainTextAsync("Written down");
        Assert.Equal(before + 1, server.Entries());
        await Expect(visit.Page.Locator(".chart-of table").First).ToContainTextAsync(shown);
        visit.Own.Check();
    }

    [Fact]
    public async Task Several_spots_are_one_reading()
    {
        await using var server = await DemoServer.Start();
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Desktop));
        await visit.Open("/turf");
        foreach (var (spot, typed) in ((int, string)[])[(0, "6"), (1, "6.2"), (2, "0.236 in")]) await visit.Page.Locator("#canopy [name=mm]").Nth(spot).FillAsync(typed);
        await visit.Page.Locator("#canopy").GetByText("prism").ClickAsync();
        await visit.Page.Locator("#canopy button.go").ClickAsync();
        await Expect(visit.Page.Locator("[data-notice]")).ToContainTextAsync("Written down");
        // (6 + 6.2 + 5.9944) / 3
        await Expect(visit.Page.Locator(".chart-of table").First).ToContainTextAsync("6.1 mm read before mowing");
    }

    [Fact]
    public Task A_look_is_entered_by_touch() => Look(ViewSize.Phone, async page =>
    {
        foreach (var word in (string[])["purple", "white, torn", "footprints stay"]) await page.Locator("#look label", new() { HasTextString = word }).TapAsync();
        await page.Locator("#look button.go").TapAsync();
    });

    [Fact]
    public Task A_look_is_entered_by_keyboard() => Look(ViewSize.Desktop, async page =>
    {
        async Task Press(params string[] keys)
        {
            foreach (var key in keys) await page.Keyboard.PressAsync(key);
        }
        await page.Locator("#look [name=colour]").First.FocusAsync();
        await Press("Space", "ArrowRight", "ArrowRight", "ArrowRight");                    // green, pale, yellow, purple
        await Press("Tab", "Space", "ArrowRight", "ArrowRight");                            // clean, ragged, white
        await Press("Tab", "Tab", "Tab", "Space");                                         // past what came off and underfoot: footprints stay
        await page.Locator("#look button.go").FocusAsync();
        await Press("Enter");
    });

    private async Task Look(ViewSize size, Func<IPage, Task> enter)
    {
        await using var server = await DemoServer.Start();
        var before = server.Entries();
        await using var visit = await site.VisitOf(new(server.Server.Address), new(size));
        await visit.Open("/turf");
        await enter(visit.Page);
        var notice = visit.Page.Locator("[data-notice]");
        foreach (var word in (string[])["purple", "white", "footprints"]) await Expect(notice).ToContainTextAsync(word);
        Assert.Equal(before + 1, server.Entries());
        await PageChecks.Reads(visit.Page, ["Keep off green today", "footprints stay", "White tips: likely a blunt edge or a wide gap"]);
        visit.Own.Check();
    }
}
