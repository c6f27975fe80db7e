using Closemown.Tests.Web;
using Microsoft.Playwright;
using Xunit;

namespace Closemown.Browser.Tests;

/// <summary>The lap timer counts by itself and stops by itself, and gives the minutes to the form.</summary>
public sealed class LapTimerTests(Site site)
{
    private const string Step = "/bench?unit=u&begun=1";

    /// <summary>Blunt along the whole width, brought together by a click: the next step is a round of lapping.</summary>
    private static readonly string[] Blunt =
    [
        """{"kind":"fit","playLeft":"none","playRight":"none","knifeScrews":"tight","adjusters":"free","blades":"straight"}""",
        """{"kind":"torch","left":"wide","centre":"wide","right":"wide"}""",
        """{"kind":"paper-cut","left":"folds","centre":"folds","right":"folds"}""",
        """{"kind":"contact","left":"light","right":"light"}""",
        """{"kind":"contact","left":"light","centre":"light","right":"light"}""",
        """{"kind":"contact","left":"light","centre":"light","right":"light"}""",
        """{"kind":"clicks","left":1,"right":1}""",
    ];

    private static IEnumerable<string> Book => Blunt.Select((entry, n) => FormattableString.Invariant($$"""{"v":1,"id":"01900000-0000-7000-8000-00000000000{{n + 1}}","at":"2026-07-01T08:5{{n}}:00Z","unit":"u",{{entry[1..]}}"""));

    [Fact]
    public async Task Counts_down_says_what_to_do_stops_and_fills_the_form()
    {
        await using var server = await ServerBench.Start(entries: Book);
        // Later than the visitor's clock ever is here: nothing is written down ahead of time.
        server.Time.Now = new(2026, 7, 1, 9, 30, 0, TimeSpan.Zero);
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Phone));
        var page = visit.Page;
        await page.Clock.InstallAsync(new() { TimeDate = new DateTime(2026, 7, 1, 9, 2, 0, DateTimeKind.Utc) });
        await visit.Open(Step);
        await Assertions.Expect(page.Locator("section.now .big")).ToContainTextAsync("for 2 minutes");
        Assert.False(await page.Locator("[data-clock]").IsVisibleAsync());
        await page.Clock.PauseAtAsync(new DateTime(2026, 7, 1, 9, 10, 0, DateTimeKind.Utc));
        await page.Locator("[data-timer-start]").TapAsync();
        var (left, phase) = (page.Locator("[data-timer-left]"), page.Locator("[data-timer-phase]"));
        Assert.Equal("5", await left.InnerTextAsync());
        Assert.Equal("Hands free.", await phase.InnerTextAsync());
        await page.Clock.RunForAsync(5_000);
        Assert.Equal("2:00", await left.InnerTextAsync());
        Assert.Contains("Touch nothing", await phase.InnerTextAsync(), StringComparison.Ordinal);
        await page.Clock.RunForAsync(30_000);
        Assert.Equal("1:30", await left.InnerTextAsync());
        await page.Clock.RunForAsync(30_000);
        Assert.Equal("Half-way", await phase.InnerTextAsync());
        await page.Clock.RunForAsync(50_000);
        Assert.Equal("0:10", await left.InnerTextAsync());
        Assert.Equal("Ten seconds", await phase.InnerTextAsync());
        await Picture.Shot(visit, "bench-timer");
        // Digits that are read from 3 m: 12 mm high at least, a two-hundred-and-fiftieth of the way (common practice, no source); a digit is 0.7 of its size, a CSS px of a phone about 0.16 mm.
        Assert.True(await left.EvaluateAsync<double>("e => parseFloat(getComputedStyle(e).fontSize)") * 0.7 * 0.16 >= 12);
        await page.Clock.RunForAsync(10_000);
        Assert.Equal("Stop. Lead off. Wash, look.", await phase.InnerTextAsync());
        await page.Locator("[data-timer-stop]").TapAsync();
        Assert.Equal("2", await page.Locator("#lap-minutes").InputValueAsync());
        await page.Clock.ResumeAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Done, and washed off" }).TapAsync();
        await Assertions.Expect(page.Locator(".notice").First).ToContainTextAsync("lap");
        visit.Own.Check();
    }

    [Fact]
    public async Task Stopped_early_the_form_has_what_was_turned()
    {
        await using var server = await ServerBench.Start(entries: Book);
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Phone));
        var page = visit.Page;
        await page.Clock.InstallAsync(new() { TimeDate = new DateTime(2026, 7, 1, 9, 2, 0, DateTimeKind.Utc) });
        await visit.Open(Step);
        await page.Clock.PauseAtAsync(new DateTime(2026, 7, 1, 9, 10, 0, DateTimeKind.Utc));
        await page.Locator("[data-timer-start]").TapAsync();
        await page.Clock.RunForAsync(5_000 + 48_000);
        await page.Locator("[data-timer-stop]").TapAsync();
        await page.Locator("[data-timer-stop]").TapAsync();
        Assert.Equal("0.8", await page.Locator("#lap-minutes").InputValueAsync());
    }

    [Fact]
    public async Task Without_script_a_clock_is_named_and_the_form_works()
    {
        await using var server = await ServerBench.Start(entries: Book);
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Phone, Script: false));
        await visit.Open(Step);
        await PageChecks.Reads(visit.Page, ["Use a clock: 2 minutes"]);
        Assert.False(await visit.Page.Locator("[data-timer-start]").IsVisibleAsync());
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Done, and washed off" }).TapAsync();
        await Assertions.Expect(visit.Page.Locator(".notice").First).ToContainTextAsync("lap");
    }
}
