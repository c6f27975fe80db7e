using Microsoft.Playwright;

namespace Closemown.Browser.Tests;

/// <summary>A screen.</summary>
/// <param name="Name">Its name in the names of files.</param>
/// <param name="WidthPx">CSS px.</param>
/// <param name="HeightPx">CSS px.</param>
/// <param name="Touch">Used with fingers, and laid out as a phone does.</param>
/// <param name="Dots">Dots of the screen for one CSS px.</param>
public sealed record ViewSize(string Name, int WidthPx, int HeightPx, bool Touch, float Dots)
{
    public static ViewSize Phone { get; } = new("phone", 390, 844, true, 2);

    public static ViewSize Desktop { get; } = new("desktop", 1280, 900, false, 1);

    public static IReadOnlyList<ViewSize> All { get; } = [Phone, Desktop];

    public static ViewSize Named(string name) => All.First(s => s.Name == name);
}

/// <summary>How a visitor looks at the pages.</summary>
/// <param name="Size">The screen.</param>
/// <param name="Dark">Dark is preferred.</param>
/// <param name="Script">Script may run.</param>
/// <param name="StillMotion">Less motion is preferred: pictures are then of a page at rest.</param>
/// <param name="Workers">The pages may keep copies of themselves; else every page comes from the server.</param>
public sealed record Look(ViewSize Size, bool Dark = false, bool Script = true, bool StillMotion = true, bool Workers = false)
{
    /// <summary>The theme's name in the names of files.</summary>
    public string Theme => Dark ? "dark" : "light";

    internal BrowserNewContextOptions Options(Uri address) => new()
    {
        BaseURL = address.ToString(),
        ViewportSize = new() { Width = Size.WidthPx, Height = Size.HeightPx },
        DeviceScaleFactor = Size.Dots,
        HasTouch = Size.Touch,
        IsMobile = Size.Touch,
        ColorScheme = Dark ? ColorScheme.Dark : ColorScheme.Light,
        ReducedMotion = StillMotion ? ReducedMotion.Reduce : ReducedMotion.NoPreference,
        JavaScriptEnabled = Script,
        ServiceWorkers = Workers ? ServiceWorkerPolicy.Allow : ServiceWorkerPolicy.Block,
        Locale = "en-GB",
        TimezoneId = "UTC",
    };
}
