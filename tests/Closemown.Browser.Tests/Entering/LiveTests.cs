using Closemown.Tests.Web;
using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace Closemown.Browser.Tests;

/// <summary>What one writes another sees, without a hand on the page and without losing what they do.</summary>
public sealed class LiveTests(Site site)
{
    private static readonly LocatorAssertionsToHaveAttributeOptions FiveSeconds = new() { Timeout = 5000 };

    private static async Task<(ServerBench Server, Visit One, Visit Other)> Two(Site site, string path)
    {
        var server = await DemoServer.Start();
        var one = await site.VisitOf(new(server.Server.Address), new(ViewSize.Phone));
        var other = await site.VisitOf(new(server.Server.Address), new(ViewSize.Desktop));
        await other.Open(path);
        await other.Page.EvaluateAsync("() => window.stays = true");
        return (server, one, other);
    }

    [Fact]
    public async Task An_entry_on_one_shows_on_the_other_within_five_seconds_without_reloading()
    {
        var (server, one, other) = await Two(site, "/");
        await using var _ = server;
        await using var a = one;
        await using var b = other;
        await other.Page.Locator("summary").First.ClickAsync();
        var after = (server.Entries() + 1).ToString(System.Globalization.CultureInfo.InvariantCulture);
        await one.Fill("20 min");
        await one.Send();
        await Expect(one.Page.Locator("[data-notice]")).ToBeVisibleAsync();
        await Expect(other.Page.Locator("main")).ToHaveAttributeAsync("data-seq", after, FiveSeconds);
        Assert.True(await other.Page.EvaluateAsync<bool>("() => window.stays"));
        other.Own.Check();
    }

    [Fact]
    public async Task What_is_being_typed_is_not_disturbed_and_is_there_still_after_showing_the_change()
    {
        var (server, one, other) = await Two(site, FormPage.Path);
        await using var _ = server;
        await using var a = one;
        await using var b = other;
        await other.Type("note", "half a sent");
        var before = await other.Page.Locator("main").GetAttributeAsync("data-seq");
        await one.Fill("20 min");
        await one.Send();
        await Expect(other.Page.Locator("[data-changed]")).ToBeVisibleAsync();
        await Expect(other.Page.Locator("main")).ToHaveAttributeAsync("data-seq", before!);
        await other.Page.Locator("[data-changed] button").ClickAsync();
        await Expect(other.Page.Locator("main")).Not.ToHaveAttributeAsync("data-seq", before!);
        await Expect(other.Page.Locator("[name=note]")).ToHaveValueAsync("half a sent");
        await Expect(other.Page.Locator("[data-changed]")).ToHaveCountAsync(0);
        Assert.True(await other.Page.EvaluateAsync<bool>("() => window.stays"));
    }

    [Fact]
    public async Task While_a_timer_runs_the_page_stays_as_it_is()
    {
        var (server, one, other) = await Two(site, "/");
        await using var _ = server;
        await using var a = one;
        await using var b = other;
        await other.Page.EvaluateAsync("() => document.querySelector('main').append(Object.assign(document.createElement('p'), { id: 'timer' }))");
        await other.Page.EvaluateAsync("() => document.getElementById('timer').dataset.busy = ''");
        await one.Fill("20 min");
        await one.Send();
        await Expect(other.Page.Locator("[data-changed]")).ToBeVisibleAsync();
        await Expect(other.Page.Locator("#timer")).ToHaveCountAsync(1);
    }

    [Fact]
    public async Task Focus_and_what_was_unfolded_stay()
    {
        var (server, one, other) = await Two(site, "/");
        await using var _ = server;
        await using var a = one;
        await using var b = other;
        await other.Page.EvaluateAsync("() => { const d = document.createElement('details'); d.id = 'made'; document.querySelector('main').append(d); }");
        await other.Page.Locator("nav.pages a").Nth(1).FocusAsync();
        var summaries = await other.Page.Locator("main summary").CountAsync();
        Assert.True(summaries > 0);
        await other.Page.Locator("main summary").First.ClickAsync();
        await one.Open("/enter?kind=look&area=green");
        await one.Page.Locator("[name=colour]").SelectOptionAsync("green");
        await one.Send();
        // What was put into the page by hand is gone: it was exchanged.
        await Expect(other.Page.Locator("#made")).ToHaveCountAsync(0);
        await Expect(other.Page.Locator("main details[open]")).Not.ToHaveCountAsync(0);
        await Expect(other.Page.Locator("main summary").First).ToBeFocusedAsync();
    }
}
