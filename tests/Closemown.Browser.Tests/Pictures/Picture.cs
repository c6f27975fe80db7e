using Microsoft.Playwright;

namespace Closemown.Browser.Tests;

/// <summary>Pictures of pages.</summary>
public static class Picture
{
    /// <summary>Writes artifacts/screenshots/NAME-SIZE-THEME.png, the whole page from top to bottom.</summary>
    /// <returns>The file.</returns>
    public static Task<string> Shot(Visit visit, string name)
    {
        ArgumentNullException.ThrowIfNull(visit);
        return Take(visit.Page, Path.Combine(Sources.Screenshots, $"{name}-{visit.Look.Size.Name}-{visit.Look.Theme}.png"), whole: true);
    }

    /// <summary>Takes a picture into a file.</summary>
    /// <param name="page">The page.</param>
    /// <param name="file">The file, written anew.</param>
    /// <param name="whole">The whole page, not only what the screen shows first.</param>
    /// <returns>The file.</returns>
    public static async Task<string> Take(IPage page, string file, bool whole)
    {
        ArgumentNullException.ThrowIfNull(page);
        // Hiding the caret would put a style into the page, which its policy forbids.
        await page.ScreenshotAsync(new() { Path = file, FullPage = whole, Caret = ScreenshotCaret.Initial });
        return file;
    }
}
