using Microsoft.Playwright;
using Xunit;

namespace Closemown.Browser.Tests;

/// <summary>A paper check is written down on the page of the steel: by finger, by keyboard alone, and without script.</summary>
public sealed class PaperCheckTests(Site site)
{
    private const string Steel = "/steel?unit=ten-blade";

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task By_finger_on_a_phone_with_script_and_without(bool script)
    {
        await using var server = await DemoServer.Start();
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Phone, Script: script));
        await visit.Open(Steel);
        var check = visit.Page.Locator("#check");
        foreach (var (station, word) in (IEnumerable<(string, string)>)[("left", "cuts"), ("centre", "nicks"), ("right", "folds")])
            await check.Locator($"label:has(input[name={station}][value={word}])").TapAsync();
        await check.GetByRole(AriaRole.Button, new() { Name = "Write it down" }).TapAsync();
        await Written(visit);
    }

    [Fact]
    public async Task By_keyboard_alone()
    {
        await using var server = await DemoServer.Start();
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Desktop));
        await visit.Open(Steel);
        // Tab into the first station; the arrows choose within one, Tab goes on to the next.
        await Reach(visit.Page, "input[name=left]");
        await visit.Page.Keyboard.PressAsync("Space");
        await Reach(visit.Page, "input[name=centre]");
        await visit.Page.Keyboard.PressAsync("ArrowDown");
        await Reach(visit.Page, "input[name=right]");
        await visit.Page.Keyboard.PressAsync("ArrowUp");
        await Reach(visit.Page, "#check button[type=submit]");
        await visit.Page.Keyboard.PressAsync("Enter");
        await Written(visit);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Clicks_are_chosen_with_their_way_and_need_no_sign(bool script)
    {
        await using var server = await DemoServer.Start();
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Phone, Script: script));
        await visit.Open(Steel);
        await visit.Page.GetByText("Clicks", new() { Exact = true }).ClickAsync();
        await visit.Page.GetByLabel("Left", new() { Exact = true }).SelectOptionAsync(new SelectOptionValue { Label = "2 clicks in" });
        await visit.Page.GetByLabel("Right", new() { Exact = true }).SelectOptionAsync(new SelectOptionValue { Label = "1 click out" });
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Write down the clicks" }).ClickAsync();
        await Assertions.Expect(visit.Page.Locator(".notice").First).ToContainTextAsync("clicks");
        var line = (await server.Machine.GetStringAsync("/book.jsonl", TestContext.Current.CancellationToken)).Split('\n').Last(l => l.Contains("\"clicks\"", StringComparison.Ordinal));
        Assert.Contains("\"left\":2", line, StringComparison.Ordinal);
        Assert.Contains("\"right\":-1", line, StringComparison.Ordinal);
    }

    /// <summary>Presses Tab until what the selector names has the focus.</summary>
    private static async Task Reach(IPage page, string selector)
    {
        for (var n = 0; n < 60; n++)
        {
            await page.Keyboard.PressAsync("Tab");
            if (await page.EvaluateAsync<bool>("s => document.activeElement.matches(s)", selector)) return;
        }
        Assert.Fail($"Tab does not come to {selector}.");
    }

    private static async Task Written(Visit visit)
    {
        await Assertions.Expect(visit.Page.Locator(".notice").First).ToContainTextAsync("left cuts");
        var said = await visit.Page.Locator(".notice").First.InnerTextAsync();
        Assert.Contains("nicks", said, StringComparison.Ordinal);
        Assert.Contains("right folds", said, StringComparison.Ordinal);
        visit.Own.Check();
    }
}
