using Microsoft.Playwright;

namespace Closemown.Browser.Tests;

/// <summary>One visitor with cookies and stores of their own, and one page open.</summary>
public sealed class Visit : IAsyncDisposable
{
    private readonly IBrowserContext context;

    private Visit(IBrowserContext context, IPage page, OnlyOwn own, Look look) => (this.context, Page, Own, Look) = (context, page, own, look);

    public IPage Page { get; }

    /// <summary>The visitor's cookies, stores and network.</summary>
    public IBrowserContext Context => context;

    public Look Look { get; }

    /// <summary>What the pages asked of others, and complained of, so far.</summary>
    public OnlyOwn Own { get; }

    public static async Task<Visit> Start(IBrowser browser, Uri address, Look look)
    {
        ArgumentNullException.ThrowIfNull(browser);
        ArgumentNullException.ThrowIfNull(look);
        var context = await browser.NewContextAsync(look.Options(address));
        // A machine at work on other things as well is slow, not wrong.
        context.SetDefaultTimeout(90_000);
        var own = OnlyOwn.Watch(context, address);
        return new(context, await context.NewPageAsync(), own, look);
    }

    /// <summary>Opens a page and waits until all of it is there.</summary>
    /// <param name="path">Its address on the server, from the root.</param>
    /// <exception cref="InvalidOperationException">The server answered with a fault.</exception>
    public async Task Open(string path)
    {
        var answer = await Page.GotoAsync(path, new() { WaitUntil = WaitUntilState.Load });
        if (answer is not { Ok: true }) throw new InvalidOperationException($"{path} was answered with {answer?.Status}.");
    }

    public async ValueTask DisposeAsync() => await context.DisposeAsync();
}
