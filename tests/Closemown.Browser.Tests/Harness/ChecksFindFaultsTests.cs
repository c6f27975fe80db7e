using Xunit;
using Xunit.Sdk;

namespace Closemown.Browser.Tests;

/// <summary>Each check finds the fault it is there for, in a page that has it, and nothing in a page that has none.</summary>
public sealed class ChecksFindFaultsTests(Site site)
{
    private const string Clean = "<p>The strip <a href='#made'>cuts</a>.</p><p id='made'><button>Write it down</button></p><label>Note <input></label>";
    private const string High = "a, button, input { display: inline-block; min-height: 48px; min-width: 48px; font: inherit }";

    public static TheoryData<string> Sizes => [.. ViewSize.All.Select(s => s.Name)];

    [Theory]
    [MemberData(nameof(Sizes))]
    public async Task A_page_without_a_fault_passes_them_all(string size)
    {
        await using var visit = await site.Visit(new(ViewSize.Named(size)));
        await visit.OpenMade(Clean, High);
        await PageChecks.NoSideScroll(visit.Page);
        await PageChecks.Targets(visit.Page, 48);
        await PageChecks.Reads(visit.Page, ["the strip cuts"]);
        await PageChecks.Axe(visit.Page);
        visit.Own.Check();
    }

    [Fact]
    public async Task Axe_tells_each_rule_and_its_place()
    {
        (string Rule, string Place, string Markup)[] faults =
        [
            // 5.3:1: enough for AA, not for reading in sunlight.
            ("color-contrast-enhanced", "#faint", "<p id='faint' style='color:#6b6b6b;background:#fff'>faint</p>"),
            ("image-alt", "#untold", "<img id='untold' src='data:image/gif;base64,R0lGODlhAQABAAAAACw='>"),
            ("label", "#unnamed", "<input id='unnamed'>"),
            ("heading-order", "#deep", "<h3 id='deep'>Two steps down</h3>"),
            ("target-size", "#small", "<p><button id='small' style='width:12px;height:12px;padding:0;border:0'>a</button><button style='width:12px;height:12px;padding:0;border:0'>b</button></p>"),
        ];
        await using var visit = await site.Visit(new(ViewSize.Phone));
        await visit.OpenMade(string.Concat(faults.Select(f => f.Markup)));
        var told = (await Assert.ThrowsAsync<FailException>(() => PageChecks.Axe(visit.Page))).Message;
        Assert.All(faults, f => Assert.Matches($@"(?m)^{f.Rule} \(.*\n(  .*\n)*?  {f.Place}$", told));
    }

    [Theory]
    [InlineData("<img alt='' src='http://elsewhere.example/dot.png'>", "asked another origin: GET http://elsewhere.example/dot.png")]
    [InlineData("<script>console.error('it is stuck')</script>", "console error: it is stuck")]
    [InlineData("<script>undefinedThing()</script>", "uncaught in script: ")]
    [InlineData("<img alt='' src='/there-is-no-such-picture.png'>", "404")]
    public async Task What_a_page_asks_elsewhere_or_complains_of_is_told(string body, string said)
    {
        await using var visit = await site.Visit(new(ViewSize.Desktop));
        await visit.OpenMade(body);
        Assert.Contains(said, Assert.Throws<FailException>(visit.Own.Check).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("<script>document.title = 'run'</script>")]
    [InlineData("<p style='color:red'>red</p>")]
    [InlineData("<button onclick='go()'>Go</button>")]
    [InlineData("<img alt='' src='http://elsewhere.example/dot.png'>")]
    public async Task What_the_policy_forbids_is_told(string body)
    {
        await using var visit = await site.Visit(new(ViewSize.Desktop));
        await visit.OpenMade(body, policy: "default-src 'self'; style-src-elem 'unsafe-inline'; img-src data:");
        Assert.Contains("Content Security Policy directive", Assert.Throws<FailException>(visit.Own.Check).Message, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Sizes))]
    public async Task A_page_wider_than_the_screen_is_told(string size)
    {
        await using var visit = await site.Visit(new(ViewSize.Named(size)));
        await visit.OpenMade("<div id='too-wide' style='width:1500px'>wide</div>");
        Assert.Contains("too-wide", (await Assert.ThrowsAsync<FailException>(() => PageChecks.NoSideScroll(visit.Page))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Each_low_target_is_told_and_a_label_counts()
    {
        await using var visit = await site.Visit(new(ViewSize.Phone));
        await visit.OpenMade(
            "<a class='high' href='#'>a</a><a id='low-link' href='#'>b</a><button id='low-button'>c</button><label class='high'><input type='radio'>d</label><label><input id='low-radio' type='radio'>e</label><input type='hidden'><button hidden>f</button>",
            ".high { display: block; height: 44px } button { height: 43px }");
        var told = (await Assert.ThrowsAsync<FailException>(() => PageChecks.Targets(visit.Page, 44))).Message.Split('\n');
        Assert.Collection(told,
            t => Assert.Contains("low-link", t, StringComparison.Ordinal),
            t => Assert.StartsWith("43.0 px high, wanted 44: <button id=\"low-button\"", t, StringComparison.Ordinal),
            t => Assert.Contains("low-radio", t, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(7)]
    public async Task The_sheets_of_a_print_are_counted(int sheets)
    {
        await using var visit = await site.Visit(new(ViewSize.Desktop));
        await visit.OpenMade(string.Concat(Enumerable.Range(1, sheets - 1).Select(n => $"<p style='break-after:page'>sheet {n} <svg width='9' height='9'><circle r='4'/></svg></p>")) + "<p>the last</p>");
        Assert.Equal(sheets, Paper.Sheets(await Paper.Print(visit.Page)));
    }

    [Fact]
    public async Task A_text_that_is_hidden_is_not_read()
    {
        await using var visit = await site.Visit(new(ViewSize.Phone));
        await visit.OpenMade("<p hidden>under the table</p>");
        await Assert.ThrowsAsync<ContainsException>(() => PageChecks.Reads(visit.Page, ["under the table"]));
    }
}
