using Closemown.Tests.Web;
using Microsoft.Playwright;
using Xunit;

namespace Closemown.Browser.Tests;

/// <summary>At the bench: the cautions, a check in as many touches as it has places, the next step, taking back, and the mirror.</summary>
public sealed class BenchTests(Site site)
{
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task From_the_cautions_to_a_check_the_next_step_and_back(bool script)
    {
        await using var server = await DemoServer.Start();
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Phone, Script: script));
        var page = visit.Page;
        await visit.Open("/bench");
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin" }).TapAsync();
        var asked = page.Locator("section.now .big");
        await Assertions.Expect(asked).ToContainTextAsync("feel at both ends");
        await page.Locator("label:has(input[name=left][value=none])").TapAsync();
        await page.Locator("label:has(input[name=right][value=none])").TapAsync();
        // With script the last answer wrote it down.
        if (!script) await page.GetByRole(AriaRole.Button, new() { Name = "Write it down" }).TapAsync();
        await Assertions.Expect(page.Locator(".notice").First).ToContainTextAsync("contact: left none");
        await Assertions.Expect(asked).Not.ToContainTextAsync("feel at both ends");
        await page.GetByRole(AriaRole.Button, new() { Name = "Take back the last entry" }).TapAsync();
        await Assertions.Expect(page.Locator(".notice").First).ToContainTextAsync("Taken out: contact");
        await Assertions.Expect(asked).ToContainTextAsync("feel at both ends");
        visit.Own.Check();
    }

    [Fact]
    public async Task The_arrows_of_the_keyboard_choose_and_write_nothing()
    {
        await using var visit = await site.Visit(new(ViewSize.Desktop));
        await visit.Open("/bench?unit=ten-blade&begun=1");
        await visit.Page.Locator("input[name=left]").First.FocusAsync();
        await visit.Page.Keyboard.PressAsync("ArrowDown");
        await visit.Page.Locator("input[name=right]").First.FocusAsync();
        await visit.Page.Keyboard.PressAsync("ArrowDown");
        Assert.Equal(2, await visit.Page.Locator("input:checked").CountAsync());
        Assert.Equal(0, await visit.Page.Locator(".notice").CountAsync());
        Assert.Contains("begun=1", visit.Page.Url, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Not_done_brings_another_step()
    {
        // An empty book: nothing is known of the mower yet.
        await using var server = await ServerBench.Start(now: DateTimeOffset.UtcNow);
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Phone, Script: false));
        await visit.Open("/bench?unit=front&begun=1");
        var asked = visit.Page.Locator("section.now .big");
        await Assertions.Expect(asked).ToContainTextAsync("Feel both bearings");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Not done" }).TapAsync();
        await Assertions.Expect(asked).Not.ToContainTextAsync("Feel both bearings");
    }

    [Theory]
    [InlineData("behind", new[] { "left", "right" })]
    [InlineData("front", new[] { "right", "left" })]
    [InlineData("upside-down", new[] { "right", "left" })]
    public async Task The_sides_are_in_the_order_in_which_they_are_seen(string stand, string[] seen)
    {
        await using var visit = await site.Visit(new(ViewSize.Phone));
        await visit.Open("/bench?unit=ten-blade");
        await visit.Page.Locator($"label:has(input[name=stand][value={stand}])").TapAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Begin" }).TapAsync();
        await Assertions.Expect(visit.Page.Locator("section.now .big")).ToContainTextAsync("feel at both ends");
        Assert.Equal(seen, await visit.Page.Locator(".stations legend").AllInnerTextsAsync());
        Assert.Equal(seen, await visit.Page.Locator("svg.picture text").AllTextContentsAsync());
        // The fields keep the mower's own sides: what is first on the screen is the right one, and is sent as right.
        Assert.Equal(seen, await visit.Page.Locator(".stations fieldset").EvaluateAllAsync<string[]>("all => all.map(f => f.querySelector('input').name)"));
        await visit.Open("/bench?unit=ten-blade&begun=1&aim=4&area=green");
        Assert.StartsWith($"{seen[0]} ", (await visit.Page.Locator("svg.picture").GetAttributeAsync("aria-label"))!.Split("see them: ")[1], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Where_one_stands_leaves_the_other_choices_alone()
    {
        await using var visit = await site.Visit(new(ViewSize.Phone));
        await visit.Open("/look?back=" + Uri.EscapeDataString("/bench?unit=ten-blade"));
        await visit.Page.Locator("label:has(input[name=words][value=uk])").TapAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Keep it so" }).TapAsync();
        await visit.Page.Locator("label:has(input[name=stand][value=front])").TapAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Begin" }).TapAsync();
        await Assertions.Expect(visit.Page.Locator("section.now .big")).ToContainTextAsync("cylinder");
    }
}
