using Microsoft.Playwright;
using Xunit;

namespace Closemown.Browser.Tests;

/// <summary>Behind the mower: one touch says how the strip looks.</summary>
public sealed class AfterMowingTests(Site site)
{
    [Theory]
    [InlineData("clean", true)]
    [InlineData("ragged", false)]
    [InlineData("uncut", true)]
    public async Task One_touch_for_the_whole_width(string word, bool script)
    {
        await using var server = await DemoServer.Start();
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Phone, Script: script));
        await visit.Open("/after?unit=ten-blade");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = word, Exact = true }).TapAsync();
        var said = visit.Page.Locator(".notice").First;
        foreach (var station in (string[])["left", "center", "right"]) await Assertions.Expect(said).ToContainTextAsync($"{station} {word}");
        visit.Own.Check();
    }

    [Fact]
    public async Task The_time_as_planned_is_one_touch()
    {
        await using var server = await DemoServer.Start();
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Phone));
        await visit.Open("/after?unit=ten-blade&area=green");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "82 min" }).TapAsync();
        await Assertions.Expect(visit.Page.Locator(".notice").First).ToContainTextAsync("mow");
        await Assertions.Expect(visit.Page.Locator(".notice").First).ToContainTextAsync("82 min");
    }

    [Fact]
    public async Task A_sound_is_two()
    {
        await using var server = await DemoServer.Start();
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Phone));
        await visit.Open("/after?unit=ten-blade");
        await visit.Page.GetByText("How it sounds").TapAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "it ticks" }).TapAsync();
        await Assertions.Expect(visit.Page.Locator(".notice").First).ToContainTextAsync("ticks");
    }
}
