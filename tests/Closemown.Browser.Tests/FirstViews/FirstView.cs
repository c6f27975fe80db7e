using Microsoft.Playwright;

namespace Closemown.Browser.Tests;

/// <summary>What it took to open a page with nothing of it kept from before. Times are ms from the beginning of the navigation.</summary>
/// <param name="Bytes">Received, headers too, as they came over the line.</param>
/// <param name="Requests">How many.</param>
/// <param name="FirstPaintMs">First contentful paint: something can be read.</param>
/// <param name="LoadMs">All of it has come.</param>
/// <param name="InteractiveMs">The latest of: first contentful paint, the document read and its scripts run, the end of the last task of 50 ms or more within half a second after the load.</param>
internal sealed record FirstView(double Bytes, double Requests, double FirstPaintMs, double LoadMs, double InteractiveMs)
{
    private static readonly TimeSpan Settle = TimeSpan.FromMilliseconds(500);

    /// <summary>Opens a page on a phone that has never seen the server.</summary>
    public static async Task<FirstView> Of(IBrowser browser, Uri server, string path, SlowLine line)
    {
        await using var visit = await Visit.Start(browser, server, new(ViewSize.Phone, StillMotion: false));
        var session = await visit.Page.Context.NewCDPSessionAsync(visit.Page);
        await session.SendAsync("Network.enable");
        await line.ApplyTo(session);
        var (bytes, requests) = (0.0, 0);
        session.Event("Network.requestWillBeSent").OnEvent += (_, _) => requests++;
        session.Event("Network.loadingFinished").OnEvent += (_, told) => bytes += told!.Value.GetProperty("encodedDataLength").GetDouble();
        await visit.Page.AddInitScriptAsync("globalThis.longTasks = []; new PerformanceObserver(l => longTasks.push(...l.getEntries().map(e => e.startTime + e.duration))).observe({ type: 'longtask', buffered: true })");
        await visit.Open(path);
        await Task.Delay(Settle);
        visit.Own.Check();
        var told = (await visit.Page.EvaluateAsync(
            """
            () => {
              const way = performance.getEntriesByType('navigation')[0];
              const paint = performance.getEntriesByName('first-contentful-paint')[0].startTime;
              return { paint, load: way.loadEventEnd, interactive: Math.max(paint, way.domContentLoadedEventEnd, ...longTasks) };
            }
            """))!.Value;
        double Ms(string name) => told.GetProperty(name).GetDouble();
        return new(bytes, requests, Ms("paint"), Ms("load"), Ms("interactive"));
    }

    /// <summary>The median of each figure for itself.</summary>
    public static FirstView Median(IReadOnlyCollection<FirstView> views)
    {
        double Middle(Func<FirstView, double> figure) => views.Select(figure).Order().ElementAt(views.Count / 2);
        return new(Middle(v => v.Bytes), Middle(v => v.Requests), Middle(v => v.FirstPaintMs), Middle(v => v.LoadMs), Middle(v => v.InteractiveMs));
    }
}
