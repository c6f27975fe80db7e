using Xunit;
using static Microsoft.Playwright.Assertions;

namespace Closemown.Browser.Tests;

/// <summary>Entries that cannot be sent wait on the device, are sent once, and are never thrown away unseen.</summary>
public sealed class WaitingTests(Site site)
{
    [Fact]
    public async Task Off_line_an_entry_waits_through_a_reload_and_is_then_sent_once()
    {
        await using var server = await DemoServer.Start();
        var before = server.Entries();
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Phone));
        await visit.Fill("20 min");
        await visit.Context.SetOfflineAsync(true);
        await visit.Send();
        await Expect(visit.Waiting()).ToContainTextAsync("1 entry waits on this device");
        await Expect(visit.Waiting()).ToContainTextAsync("mow, green: 20 min");
        await Expect(visit.Page.Locator("[name=hours]")).ToHaveValueAsync("");
        await visit.Type("hours", "30 min");
        await visit.Send();
        await Expect(visit.Waiting()).ToContainTextAsync("2 entries wait");
        await PageChecks.Targets(visit.Page, 44);
        await PageChecks.NoSideScroll(visit.Page);
        await PageChecks.Axe(visit.Page);
        await visit.Cut();
        await visit.Context.SetOfflineAsync(false);
        await visit.Page.ReloadAsync();
        await Expect(visit.Waiting()).ToContainTextAsync("2 entries wait");
        Assert.Equal(before, server.Entries());
        await visit.Mend();
        await Expect(visit.Waiting()).ToHaveCountAsync(0);
        await server.Holds(before + 2);
        await visit.Page.ReloadAsync();
        await Expect(visit.Waiting()).ToHaveCountAsync(0);
        await server.Holds(before + 2);
    }

    [Fact]
    public async Task An_entry_that_arrived_although_the_answer_was_lost_stays_one_entry()
    {
        await using var server = await DemoServer.Start();
        var before = server.Entries();
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Phone));
        await visit.Fill("20 min");
        await visit.Page.RouteAsync("**/enter", async r =>
        {
            await r.FetchAsync();
            await r.AbortAsync("connectionreset");
        });
        await visit.Send();
        await Expect(visit.Waiting()).ToContainTextAsync("1 entry waits");
        Assert.Equal(before + 1, server.Entries());
        await visit.Mend();
        await Expect(visit.Waiting()).ToHaveCountAsync(0);
        await server.Holds(before + 1);
    }

    [Theory]
    [InlineData(502)]
    [InlineData(503)]
    [InlineData(504)]
    public async Task A_machine_that_cannot_work_just_now_is_waited_for(int status)
    {
        await using var server = await DemoServer.Start();
        var before = server.Entries();
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Phone));
        await visit.Fill("20 min");
        await visit.Page.RouteAsync("**/enter", r => r.FulfillAsync(new() { Status = status, Body = "later" }));
        await visit.Send();
        await Expect(visit.Waiting()).ToContainTextAsync("1 entry waits");
        await visit.Mend();
        await Expect(visit.Waiting()).ToHaveCountAsync(0);
        await server.Holds(before + 1);
    }

    [Fact]
    public async Task One_that_is_refused_later_stays_with_its_fault_until_it_is_mended()
    {
        await using var server = await DemoServer.Start();
        var before = server.Entries();
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Phone));
        await visit.Fill("soon");
        await visit.Cut();
        await visit.Send();
        await Expect(visit.Waiting()).ToContainTextAsync("1 entry waits");
        await visit.Type("hours", "30 min");
        await visit.Send();
        await Expect(visit.Waiting()).ToContainTextAsync("2 entries wait");
        await visit.Mend();
        await Expect(visit.Waiting().Locator(".fault")).ToBeVisibleAsync();
        await Expect(visit.Waiting()).ToContainTextAsync("mow, green: soon");
        await server.Holds(before + 1);
        await visit.Waiting().GetByText("Mend it").ClickAsync();
        await Expect(visit.Page.Locator("h1")).ToHaveTextAsync("Not written down yet");
        await Expect(visit.Page.Locator("[name=hours]")).ToHaveValueAsync("soon");
        await visit.Type("hours", "15 min");
        await visit.Send();
        await Expect(visit.Page.Locator("[data-notice]")).ToContainTextAsync("green mown for 15 min");
        await Expect(visit.Waiting()).ToHaveCountAsync(0);
        await server.Holds(before + 2);
    }

    [Fact]
    public async Task What_is_typed_while_the_last_one_is_on_its_way_is_not_lost()
    {
        await using var server = await DemoServer.Start();
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Phone));
        await visit.Fill("20 min");
        var away = new TaskCompletionSource();
        await visit.Page.RouteAsync("**/enter", async r =>
        {
            await away.Task;
            await r.AbortAsync("internetdisconnected");
        });
        await visit.Send();
        await visit.Type("hours", "35 min");
        away.SetResult();
        await Expect(visit.Waiting()).ToContainTextAsync("mow, green: 20 min");
        await Expect(visit.Page.Locator("form[data-entry] [name='hours']")).ToHaveValueAsync("35 min");
    }

    [Fact]
    public async Task Nothing_is_dropped_without_being_asked_twice()
    {
        await using var server = await DemoServer.Start();
        var before = server.Entries();
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Phone));
        await visit.Fill("20 min");
        await visit.Cut();
        await visit.Send();
        await visit.Waiting().GetByText("Drop it").ClickAsync();
        await visit.Waiting().GetByText("Keep it").ClickAsync();
        await Expect(visit.Waiting()).ToContainTextAsync("mow, green: 20 min");
        await visit.Waiting().GetByText("Drop it").ClickAsync();
        await visit.Waiting().GetByText("Yes, drop it").ClickAsync();
        await Expect(visit.Waiting()).ToHaveCountAsync(0);
        await visit.Mend();
        await server.Holds(before);
    }
}
