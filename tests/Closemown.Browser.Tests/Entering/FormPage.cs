using Closemown.Tests.Web;
using Microsoft.Playwright;

namespace Closemown.Browser.Tests;

/// <summary>The form for a mowing, as a visitor fills it in.</summary>
internal static class FormPage
{
    public const string Path = "/enter?kind=mow&unit=mower&area=green";

    /// <summary>Opens it and types how long.</summary>
    public static async Task Fill(this Visit visit, string hours, string path = Path)
    {
        await visit.Open(path);
        await visit.Type("hours", hours);
    }

    public static Task Type(this Visit visit, string field, string text) => visit.Page.Locator($"form[data-entry] [name='{field}']").FillAsync(text);

    /// <summary>Presses the button that writes it down.</summary>
    public static Task Send(this Visit visit) => visit.Page.Locator("form[data-entry] button.go").ClickAsync();

    /// <summary>What waits on the device.</summary>
    public static ILocator Waiting(this Visit visit) => visit.Page.Locator("[data-waiting]");

    /// <summary>The server is out of reach of forms, and of what comes before them.</summary>
    public static async Task Cut(this Visit visit)
    {
        foreach (var path in (string[])["**/enter", "**/form-token"]) await visit.Page.RouteAsync(path, r => r.Request.Method == "POST" || r.Request.Url.EndsWith("/form-token", StringComparison.Ordinal) ? r.AbortAsync("connectionrefused") : r.ContinueAsync());
    }

    /// <summary>It is in reach again, and the browser says so.</summary>
    public static async Task Mend(this Visit visit)
    {
        await visit.Page.UnrouteAllAsync();
        await visit.Page.EvaluateAsync("() => dispatchEvent(new Event('online'))");
    }

    /// <summary>Waits until the book holds so many entries, and sees that it stays so.</summary>
    public static async Task Holds(this ServerBench server, long entries)
    {
        for (var i = 0; i < 300 && server.Entries() < entries; i++) await Task.Delay(100);
        await Task.Delay(300);
        Xunit.Assert.Equal(entries, server.Entries());
    }
}
