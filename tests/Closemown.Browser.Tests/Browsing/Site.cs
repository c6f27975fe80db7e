using Closemown.Browser.Tests;
using Closemown.Tests.Web;
using Microsoft.Playwright;
using Xunit;

[assembly: AssemblyFixture(typeof(Site))]

namespace Closemown.Browser.Tests;

/// <summary>One server over the demo and one Chromium, for all tests; each test visits in a context of its own.</summary>
/// <remarks>The book is shared: a test that enters something starts a server of its own, see <see cref="DemoServer"/>.</remarks>
public sealed class Site : IAsyncLifetime
{
    private Chromium? chromium;
    private ServerBench? server;

    /// <summary>The server's address.</summary>
    public Uri Address => new(server!.Server.Address);

    public async ValueTask InitializeAsync()
    {
        // A machine at work on other things as well is slow, not wrong.
        Assertions.SetDefaultExpectTimeout(60_000);
        // The browser first: where there is none, nothing else is waited for.
        chromium = await Chromium.Start();
        server = await DemoServer.Start();
    }

    /// <summary>Comes to the shared server.</summary>
    public Task<Visit> Visit(Look look) => VisitOf(Address, look);

    /// <summary>Comes to another server.</summary>
    public Task<Visit> VisitOf(Uri address, Look look) => Tests.Visit.Start(chromium!.Browser, address, look);

    public async ValueTask DisposeAsync()
    {
        if (chromium is not null) await chromium.DisposeAsync();
        if (server is not null) await server.DisposeAsync();
    }
}
