using Xunit;

namespace Closemown.Browser.Tests;

/// <summary>Days off are ticked, and the plan says what they change.</summary>
public sealed class DaysOffTests(Site site)
{
    [Fact]
    public async Task A_day_on_is_reckoned_with_and_can_be_left_out_again()
    {
        await using var visit = await site.Visit(new(ViewSize.Phone));
        await visit.Open("/plan");
        var usual = await visit.Page.Locator("article.mowing").Nth(1).GetAttributeAsync("id");
        var day = DateOnly.ParseExact(usual!["d-".Length..], "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture).AddDays(-1);
        await visit.Open($"/plan?on={day:yyyy-MM-dd}");
        await visit.Page.GetByText("Reckoned with you there on").WaitForAsync();
        Assert.Contains($"daysOn={day:yyyy-MM-dd}", await visit.Page.GetByText("Into the calendar").GetAttributeAsync("href") ?? "", StringComparison.Ordinal);
        await visit.Page.GetByText("The usual days only").ClickAsync();
        await visit.Page.WaitForURLAsync("**/plan?area=*");
        Assert.Equal(0, await visit.Page.GetByText("Reckoned with you there on").CountAsync());
        visit.Own.Check();
    }

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
