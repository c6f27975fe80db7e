using System.Globalization;
using System.Text.RegularExpressions;
using Closemown.Tests.Web;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace Closemown.Browser.Tests;

/// <summary>A height asked for and set, step by step.</summary>
public sealed partial class HeightSettingTests(Site site)
{
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_cut_asked_for_in_inches_is_answered_with_what_to_set(bool script)
    {
        await using var visit = await site.Visit(new(ViewSize.Phone, Script: script));
        await visit.Open("/height");
        var sinks = Millimetres(await visit.Page.Locator(".facts dt", new() { HasTextString = "It sinks" }).Locator("xpath=following-sibling::dd[1]").InnerTextAsync());
        await visit.Page.Locator("#cut").FillAsync("5/32 in");
        await visit.Page.GetByText("What is to be set?").ClickAsync();
        await Expect(visit.Page).ToHaveURLAsync(new Regex("cut=5"));
        await PageChecks.Reads(visit.Page, ["5/32 in (3.97 mm)"]);
        // An inch is 25.4 mm by definition; what is set is the cut and what it sinks.
        Assert.Equal((5 * 25.4 / 32) + sinks, Millimetres(await visit.Page.Locator("#set-to").InnerTextAsync()), 0.0101);
        visit.Own.Check();
    }

    [Theory]
    [InlineData("a little lower")]
    [InlineData("4 thumbs")]
    [InlineData("0")]
    [InlineData("4 m")]
    public async Task What_is_no_height_is_told_at_its_field_and_kept(string typed)
    {
        await using var visit = await site.Visit(new(ViewSize.Phone));
        await visit.Open("/height?cut=" + Uri.EscapeDataString(typed));
        await Expect(visit.Page.Locator("#cut-fault")).ToBeVisibleAsync();
        await Expect(visit.Page.Locator("#cut")).ToHaveValueAsync(typed);
        await PageChecks.Axe(visit.Page);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Setting_is_led_one_screw_at_a_time_and_each_step_is_noted(bool script)
    {
        await using var server = await DemoServer.Start();
        var before = server.Entries();
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Phone, Script: script));
        await visit.Open("/height?cut=4.4%20mm");
        var step = visit.Page.Locator("#step");
        var said = await step.Locator(".say.big").InnerTextAsync();
        await Expect(step.GetByRole(Microsoft.Playwright.AriaRole.Img, new() { Name = "Lower left by" })).ToBeVisibleAsync();
        await step.GetByText("Left is turned: now the other").ClickAsync();
        await Expect(step.GetByRole(Microsoft.Playwright.AriaRole.Img, new() { Name = "Lower right by" })).ToBeVisibleAsync();
        await step.GetByText("Turned as shown: note it").ClickAsync();
        await Expect(visit.Page.Locator("[data-notice]")).ToContainTextAsync("Written down");
        Assert.Equal(before + 1, server.Entries());
        Assert.NotEqual(said, await step.Locator(".say.big").InnerTextAsync());
        // The checker is itself a script.
        if (script) await PageChecks.Axe(visit.Page);
        await PageChecks.Targets(visit.Page, 44);
        visit.Own.Check();
    }

    [Fact]
    public async Task A_unit_whose_height_was_never_read_is_read_first()
    {
        await using var server = await ServerBench.Start(now: DateTimeOffset.UtcNow);
        (await server.Enter("""{"v":1,"id":"01900000-0000-7000-8000-0000000000a1","at":"2026-07-01T09:00:00Z","kind":"unit","unit":"mower","blades":8}""")).EnsureSuccessStatusCode();
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Phone));
        await visit.Open("/height");
        await PageChecks.Reads(visit.Page, ["The bench height was not read yet"]);
        await visit.Page.Locator("#gauge-left").FillAsync("7/32 in");
        await visit.Page.Locator("#gauge-right").FillAsync("5.6");
        await visit.Page.GetByText("Note the reading").ClickAsync();
        await Expect(visit.Page.Locator("[data-notice]")).ToContainTextAsync("Written down");
        await Expect(visit.Page.GetByRole(Microsoft.Playwright.AriaRole.Img, new() { Name = "From behind" })).ToBeVisibleAsync();
        visit.Own.Check();
    }

    private static double Millimetres(string text) => double.Parse(Number().Match(text).Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"\d+\.\d+")]
    private static partial Regex Number();
}
