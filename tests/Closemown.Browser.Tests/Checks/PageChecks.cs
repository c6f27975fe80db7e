using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Xunit;

namespace Closemown.Browser.Tests;

/// <summary>What holds for every page, each to be asked of a page that is open; each fails with all that it found.</summary>
public static class PageChecks
{
    private static readonly AxeRunOptions Rules = new()
    {
        RunOnly = new RunOnlyOptions { Type = "tag", Values = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22a", "wcag22aa", "best-practice"] },
        // In sunlight: 7:1 (WCAG 2.2, success criterion 1.4.6). The other is asked for by name because it is off by itself.
        Rules = new() { ["color-contrast-enhanced"] = new() { Enabled = true }, ["target-size"] = new() { Enabled = true } },
    };

    /// <summary>Every rule of WCAG 2.2 A and AA that axe knows, its best practices, and text contrast of 7:1.</summary>
    /// <exception cref="Xunit.Sdk.FailException">With each violation: the rule, and each place with its markup.</exception>
    public static async Task Axe(IPage page)
    {
        // The way that is not marked as old opens a second, blank page for what lies in frames, and takes a second more for every page. The pages hold no frames: their policy forbids them.
#pragma warning disable CS0618
        var result = await page.RunAxeLegacy(options: Rules);
#pragma warning restore CS0618
        if (result.Violations.Length == 0) return;
        Assert.Fail(string.Join('\n', result.Violations.Select(v => $"{v.Id} ({v.Impact}): {v.Help}, {v.HelpUrl}\n{string.Join('\n', v.Nodes.Select(n => $"  {n.Target}\n    {n.Html}\n    {string.Join(" ", n.Any.Concat(n.All).Concat(n.None).Select(c => c.Message))}"))}")));
    }

    /// <summary>Opens all that is folded away, so that what is inside is looked at too.</summary>
    public static Task Unfold(IPage page)
    {
        ArgumentNullException.ThrowIfNull(page);
        return page.EvaluateAsync("() => document.querySelectorAll('details').forEach(d => { d.open = true })");
    }

    /// <summary>The page is no wider than the screen.</summary>
    public static async Task NoSideScroll(IPage page)
    {
        ArgumentNullException.ThrowIfNull(page);
        var found = await page.EvaluateAsync<string[]>(
            """
            () => {
              const root = document.scrollingElement, wide = root.clientWidth;
              if (root.scrollWidth <= wide) return [];
              const out = [...document.body.querySelectorAll('*')].filter(e => e.getBoundingClientRect().right > wide + 0.5);
              return [`the page is ${root.scrollWidth} px wide, the screen ${wide}`, ...out.map(e => `  ${Math.round(e.getBoundingClientRect().right)} px: ${e.outerHTML.slice(0, 120)}`)];
            }
            """);
        if (found.Length > 0) Assert.Fail(string.Join('\n', found));
    }

    /// <summary>All that is pressed is high enough for a finger. A radio button or checkbox is as high as its label.</summary>
    /// <param name="page">The page.</param>
    /// <param name="leastPx">The least height, CSS px.</param>
    public static async Task Targets(IPage page, double leastPx)
    {
        ArgumentNullException.ThrowIfNull(page);
        var found = await page.EvaluateAsync<string[]>(
            """
            least => [...document.querySelectorAll('a[href], button, input:not([type=hidden]), select, textarea, summary')]
              .filter(e => e.checkVisibility())
              .map(e => [e, Math.max(...[e, ...(e.labels ?? [])].map(b => b.getBoundingClientRect().height))])
              .filter(([, high]) => high < least - 0.01)
              .map(([e, high]) => `${high.toFixed(1)} px high, wanted ${least}: ${e.outerHTML.slice(0, 160)}`)
            """, leastPx);
        if (found.Length > 0) Assert.Fail(string.Join('\n', found));
    }

    /// <summary>The page's text, as it is seen, holds these.</summary>
    public static async Task Reads(IPage page, IEnumerable<string> texts)
    {
        ArgumentNullException.ThrowIfNull(page);
        var seen = await page.Locator("body").InnerTextAsync();
        foreach (var text in texts) Assert.Contains(text, seen, StringComparison.OrdinalIgnoreCase);
    }
}
