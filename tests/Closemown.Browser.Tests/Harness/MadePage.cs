namespace Closemown.Browser.Tests;

/// <summary>A page made up by a test, put where the server has none, to see that a check finds what is wrong with it.</summary>
internal static class MadePage
{
    private const string Path = "/made-up-for-a-test";

    /// <summary>Opens a whole page around the body.</summary>
    /// <param name="visit">Who opens it.</param>
    /// <param name="body">What stands in its main part.</param>
    /// <param name="style">Its style sheet.</param>
    /// <param name="policy">Its content security policy; null for none.</param>
    public static async Task OpenMade(this Visit visit, string body, string style = "", string? policy = null)
    {
        var html = $"""
            <!doctype html><html lang="en-GB"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>Made up</title><link rel="icon" href="data:,">
            <style>{style}</style></head><body><main><h1>Made up</h1>{body}</main></body></html>
            """;
        await visit.Page.RouteAsync("**" + Path, route => route.FulfillAsync(new()
        {
            ContentType = "text/html",
            Body = html,
            Headers = policy is null ? null : new Dictionary<string, string> { ["Content-Security-Policy"] = policy },
        }));
        await visit.Open(Path);
    }
}
