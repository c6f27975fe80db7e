using Xunit;

namespace Closemown.Browser.Tests;

/// <summary>Days off are ticked, and the plan says what they change.</summary>
public sealed class DaysOffTests(Site site)
{
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_day_off_moves_the_mowing_planned_on_it(bool script)
    {
        await using var visit = await site.Visit(new(ViewSize.Phone, Script: script));
        await visit.Open("/plan");
        // The second mowing, since the first is today's.
        var id = await visit.Page.Locator("article.mowing").Nth(1).GetAttributeAsync("id");
        var day = id!["d-".Length..];
        await visit.Page.GetByText("Days off: what if nobody can mow?").ClickAsync();
        await visit.Page.Locator($"input[name=off][value='{day}']").CheckAsync();
        await visit.Page.GetByRole(Microsoft.Playwright.AriaRole.Button, new() { Name = "See what changes" }).ClickAsync();
        await visit.Page.WaitForURLAsync("**/plan?*off=*");
        Assert.Equal(0, await visit.Page.Locator($"article#{id}").CountAsync());
        Assert.Contains("The mowing of", await visit.Page.Locator("#changes").InnerTextAsync(), StringComparison.Ordinal);
        Assert.True(await visit.Page.Locator($"input[name=off][value='{day}']").IsCheckedAsync());
        Assert.Contains("day off", await visit.Page.Locator($"svg.weeks a[href$='#{id}'] title").TextContentAsync() ?? "", StringComparison.Ordinal);
        await PageChecks.NoSideScroll(visit.Page);
        visit.Own.Check();
    }
}
