using System.Collections.Concurrent;
using Microsoft.Playwright;
using Xunit;

namespace Closemown.Browser.Tests;

/// <summary>Watches that pages ask nothing of any other origin than the server's, and that neither script nor browser complains.</summary>
public sealed class OnlyOwn
{
    private readonly ConcurrentQueue<string> found = new();

    private OnlyOwn()
    {
    }

    /// <summary>What was found, in order.</summary>
    public IReadOnlyCollection<string> Found => found;

    /// <summary>Watches all pages of a context from now on.</summary>
    /// <param name="context">The context.</param>
    /// <param name="server">The server's address.</param>
    public static OnlyOwn Watch(IBrowserContext context, Uri server)
    {
        ArgumentNullException.ThrowIfNull(context);
        ArgumentNullException.ThrowIfNull(server);
        var watch = new OnlyOwn();
        var origin = server.GetLeftPart(UriPartial.Authority) + "/";
        context.Request += (_, request) =>
        {
            if (!IsOwn(request.Url, origin)) watch.found.Enqueue($"asked another origin: {request.Method} {request.Url}");
        };
        // What the policy of the pages forbids is told here too: Chromium writes each violation to the console as an error.
        context.Console += (_, said) =>
        {
            // The icon that a browser asks for by itself, once for all pages, is nothing that a page asked for.
            if (said.Type == "error" && !said.Location.StartsWith(origin + "favicon.ico", StringComparison.Ordinal)) watch.found.Enqueue($"console error: {said.Text} ({said.Location})");
        };
        context.WebError += (_, error) => watch.found.Enqueue($"uncaught in script: {error.Error}");
        return watch;
    }

    /// <summary>Fails with each thing found.</summary>
    public void Check()
    {
        if (!found.IsEmpty) Assert.Fail(string.Join('\n', found));
    }

    // data: and blob: are made by the page itself and fetch nothing.
    private static bool IsOwn(string url, string origin) =>
        url.StartsWith(origin, StringComparison.Ordinal) || url.StartsWith("data:", StringComparison.Ordinal) || url.StartsWith("blob:" + origin, StringComparison.Ordinal);
}
