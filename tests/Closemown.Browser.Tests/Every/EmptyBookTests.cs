using Closemown.Tests.Web;
using Xunit;

namespace Closemown.Browser.Tests;

/// <summary>What holds for each page while the book is empty, as a newcomer meets it.</summary>
public sealed class EmptyBookTests(Site site)
{
    public static TheoryData<string> Pages => EveryPageTests.Pages;

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Opens_clean_over_an_empty_book(string name)
    {
        var page = SitePages.Named(name);
        await using var server = await ServerBench.Start(now: DateTimeOffset.UtcNow);
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Phone));
        await visit.Open(page.Path);
        Assert.Equal(page.Heading, (await visit.Page.Locator("h1").TextContentAsync())?.Trim());
        await PageChecks.NoSideScroll(visit.Page);
        await PageChecks.Targets(visit.Page, page.TargetHighPx);
        await PageChecks.Axe(visit.Page);
        visit.Own.Check();
    }
}
