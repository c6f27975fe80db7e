using Xunit;

namespace Closemown.Browser.Tests;

/// <summary>What holds for each page of <see cref="SitePages"/>, in a real browser over the demo's book.</summary>
public sealed class EveryPageTests(Site site)
{
    public static TheoryData<string, string, bool> PagesBySizeAndTheme
    {
        get
        {
            var rows = new TheoryData<string, string, bool>();
            foreach (var page in SitePages.All)
            {
                foreach (var size in ViewSize.All)
                {
                    rows.Add(page.Name, size.Name, false);
                    rows.Add(page.Name, size.Name, true);
                }
            }
            return rows;
        }
    }

    public static TheoryData<string> Pages => [.. SitePages.All.Select(p => p.Name)];

    [Theory]
    [MemberData(nameof(PagesBySizeAndTheme))]
    public async Task Opens_clean_and_fits(string name, string size, bool dark)
    {
        var page = SitePages.Named(name);
        await using var visit = await site.Visit(new(ViewSize.Named(size), dark));
        await visit.Open(page.Path);
        Assert.True(File.Exists(await Picture.Shot(visit, name)));
        Assert.Equal(page.Heading, (await visit.Page.Locator("h1").TextContentAsync())?.Trim());
        await PageChecks.Reads(visit.Page, page.Texts);
        await PageChecks.NoSideScroll(visit.Page);
        await PageChecks.Unfold(visit.Page);
        await PageChecks.NoSideScroll(visit.Page);
        await PageChecks.Targets(visit.Page, page.TargetHighPx);
        await PageChecks.Axe(visit.Page);
        visit.Own.Check();
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Is_all_there_without_script(string name)
    {
        var page = SitePages.Named(name);
        await using var visit = await site.Visit(new(ViewSize.Phone, Script: false));
        await visit.Open(page.Path);
        Assert.Equal(page.Heading, (await visit.Page.Locator("h1").TextContentAsync())?.Trim());
        await PageChecks.Reads(visit.Page, page.Texts);
        visit.Own.Check();
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Prints_on_one_sheet(string name)
    {
        await using var visit = await site.Visit(new(ViewSize.Desktop));
        await visit.Open(SitePages.Named(name).Path);
        Assert.Equal(1, Paper.Sheets(await Paper.Print(visit.Page)));
    }
}
