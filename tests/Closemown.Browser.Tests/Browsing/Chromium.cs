using Microsoft.Playwright;

namespace Closemown.Browser.Tests;

/// <summary>The Chromium of this machine, as the system's packages install it; none is downloaded.</summary>
public sealed class Chromium : IAsyncDisposable
{
    private static readonly string[] Names = ["chromium", "chromium-browser"];

    private static readonly string[] Arguments =
    [
        "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync",
        // Nothing leaves this machine, whatever a page asks for.
        "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1, EXCLUDE 127.0.0.2",
    ];

    private readonly IPlaywright driver;

    private Chromium(IPlaywright driver, IBrowser browser) => (this.driver, Browser) = (driver, browser);

    public IBrowser Browser { get; }

    /// <summary>Starts it without a window.</summary>
    /// <exception cref="ChromiumMissingException">There is none.</exception>
    public static async Task<Chromium> Start()
    {
        var path = Find();
        var driver = await Playwright.CreateAsync();
        return new(driver, await driver.Chromium.LaunchAsync(new() { ExecutablePath = path, Headless = true, Args = Arguments }));
    }

    public async ValueTask DisposeAsync()
    {
        await Browser.DisposeAsync();
        driver.Dispose();
    }

    private static string Find()
    {
        var told = Environment.GetEnvironmentVariable("CLOSEMOWN_CHROMIUM");
        if (!string.IsNullOrEmpty(told))
            return File.Exists(told) ? told : throw new ChromiumMissingException($"CLOSEMOWN_CHROMIUM names {told}, and there is no such file.");
        var folders = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries);
        return folders.SelectMany(_ => Names, Path.Combine).FirstOrDefault(File.Exists)
            ?? throw new ChromiumMissingException("The browser tests need Chromium, and there is none on the PATH. On Debian: sudo apt-get install chromium. Elsewhere install it and set CLOSEMOWN_CHROMIUM to its program file.");
    }
}
