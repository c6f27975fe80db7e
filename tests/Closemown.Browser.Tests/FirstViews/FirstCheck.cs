using Microsoft.Playwright;

namespace Closemown.Browser.Tests;

/// <summary>The way of a new user through the pages: from an empty book to the first paper check, touch by touch.</summary>
internal static class FirstCheck
{
    private static ILocator GoOnButton(IPage page) => page.GetByRole(AriaRole.Button, new() { Name = "Go on to the first paper check" });

    /// <summary>One touch, on today's page: to the four questions.</summary>
    public static async Task Begin(IPage page)
    {
        await page.GetByRole(AriaRole.Link, new() { Name = "Begin" }).First.ClickAsync();
        await GoOnButton(page).WaitForAsync();
    }

    /// <summary>One touch, with all questions left open: a mower is in the book, and the check is asked for.</summary>
    public static async Task GoOn(IPage page)
    {
        await GoOnButton(page).ClickAsync();
        await page.WaitForURLAsync("**/steel?unit=mower#check");
    }

    /// <summary>Three touches: what the paper did at each station.</summary>
    public static async Task Tell(IPage page)
    {
        foreach (var place in (string[])["left", "centre", "right"]) await page.Locator($"label:has(input[name={place}][value=cuts])").ClickAsync();
    }

    /// <summary>One touch: it is in the book.</summary>
    public static async Task Write(IPage page)
    {
        await page.GetByRole(AriaRole.Button, new() { Name = "Write it down" }).First.ClickAsync();
        await page.GetByText("Written down").First.WaitForAsync();
    }
}
