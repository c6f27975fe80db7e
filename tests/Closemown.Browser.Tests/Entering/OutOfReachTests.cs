using System.Text.Json.Nodes;
using Closemown.Serving;
using Closemown.Tests.Web;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace Closemown.Browser.Tests;

/// <summary>The pages as something to install: read out of reach from the last seen copy, and forgotten where the device may not know them any more.</summary>
public sealed class OutOfReachTests(Site site)
{
    private const string Controlled = "() => navigator.serviceWorker.ready.then(() => navigator.serviceWorker.controller !== null || new Promise(done => navigator.serviceWorker.addEventListener('controllerchange', () => done(true))))";

    [Fact]
    public async Task It_can_be_installed()
    {
        await using var visit = await site.Visit(new(ViewSize.Phone, Workers: true));
        await visit.Open("/");
        Assert.True(await visit.Page.EvaluateAsync<bool>(Controlled));
        var link = await visit.Page.Locator("link[rel=manifest]").GetAttributeAsync("href");
        var answer = await visit.Page.APIRequest.GetAsync(site.Address + link![1..]);
        Assert.StartsWith("application/manifest+json", answer.Headers["content-type"], StringComparison.Ordinal);
        var manifest = JsonNode.Parse(await answer.TextAsync())!;
        Assert.All(["name", "short_name", "start_url", "display", "icons"], field => Assert.NotNull(manifest[field]));
        // What browsers ask of what they install: a PNG of 192 and one of 512.
        foreach (var size in (int[])[192, 512])
        {
            var icon = manifest["icons"]!.AsArray().First(i => (string)i!["sizes"]! == $"{size}x{size}")!;
            Assert.Equal($"{size} {size}", await visit.Page.EvaluateAsync<string>("src => new Promise(done => { const i = new Image(); i.onload = () => done(`${i.naturalWidth} ${i.naturalHeight}`); i.src = src; })", (string)icon["src"]!));
        }
        visit.Own.Check();
    }

    [Fact]
    public async Task Out_of_reach_a_page_is_read_from_its_copy_and_an_entry_is_kept()
    {
        await using var server = await DemoServer.Start();
        await using var visit = await site.VisitOf(new(server.Server.Address), new(ViewSize.Phone, Workers: true));
        await visit.Open("/");
        Assert.True(await visit.Page.EvaluateAsync<bool>(Controlled));
        await visit.Open("/");
        var said = await visit.Page.Locator("section.now").InnerTextAsync();
        await visit.Open(FormPage.Path);
        await Kept(visit, 2);
        await server.Server.App.StopAsync(TestContext.Current.CancellationToken);
        await visit.Page.GotoAsync("/");
        Assert.Equal(said, await visit.Page.Locator("section.now").InnerTextAsync());
        await Expect(visit.Page.Locator("[data-copy]")).ToContainTextAsync("out of reach");
        await PageChecks.Axe(visit.Page);
        await visit.Page.GotoAsync(FormPage.Path);
        await visit.Type("hours", "20 min");
        await visit.Send();
        await Expect(visit.Waiting()).ToContainTextAsync("1 entry waits");
        await visit.Page.GotoAsync("/look");
        await Expect(visit.Page.Locator("h1")).ToHaveTextAsync("Out of reach");
        await Expect(visit.Waiting()).ToContainTextAsync("1 entry waits");
        Assert.Equal(0, await visit.Page.EvaluateAsync<int>("async () => { let n = 0; for (const c of await caches.keys()) for (const r of await (await caches.open(c)).keys()) if (/[.]json|events|form-token/.test(r.url)) n++; return n; }"));
    }

    [Fact]
    public async Task A_device_that_is_revoked_forgets_what_it_had_seen()
    {
        await using var server = await ServerBench.Start(o => o with { Lan = true, PlainHttp = true }, now: DateTimeOffset.UtcNow);
        // 127.0.0.2 counts as this machine to a browser, and so has workers without https; to the server it is the network.
        await using var visit = await site.VisitOf(new(server.Server.NetworkAddresses[0]), new(ViewSize.Phone, Workers: true));
        await visit.Open("/pair");
        await visit.Page.Locator("[name=code]").FillAsync(server.NewCode());
        await visit.Page.Locator("button").ClickAsync();
        await Expect(visit.Page.Locator("h1")).ToHaveTextAsync("Today");
        Assert.True(await visit.Page.EvaluateAsync<bool>(Controlled));
        await visit.Open("/");
        await Kept(visit, 1);
        Assert.Equal(1, new DeviceList(Path.Combine(server.Folder, "settings"), server.Time).RevokeAll());
        await visit.Page.GotoAsync("/");
        await Expect(visit.Page.Locator("h1")).ToHaveTextAsync("Pair this device");
        await visit.Page.WaitForFunctionAsync("async () => !(await caches.has('closemown-copies'))");
    }

    /// <summary>Waits until so many pages are kept.</summary>
    private static async Task Kept(Visit visit, int pages) =>
        await visit.Page.WaitForFunctionAsync("async n => (await (await caches.open('closemown-copies')).keys()).length >= n", pages);
}
