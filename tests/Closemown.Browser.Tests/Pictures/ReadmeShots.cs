namespace Closemown.Browser.Tests;

/// <summary>A picture for the documentation.</summary>
/// <param name="File">Its name in docs/screenshots, without ending.</param>
/// <param name="Page">The page, by its name in <see cref="SitePages"/>.</param>
/// <param name="Look">How it is looked at.</param>
/// <param name="Whole">The whole page, not only what the screen shows first.</param>
internal sealed record ReadmeShot(string File, string Page, Look Look, bool Whole = false);

/// <summary>The pictures that README and docs show, taken from the demo.</summary>
internal static class ReadmeShots
{
    public static IReadOnlyList<ReadmeShot> All { get; } =
    [
        new("today-phone", "today", new(ViewSize.Phone)),
        new("bench-phone-dark", "bench-step", new(ViewSize.Phone, Dark: true)),
        new("steel-phone", "steel", new(ViewSize.Phone)),
        new("turf-desktop", "turf", new(ViewSize.Desktop)),
    ];

    /// <summary>Takes them all anew, into docs/screenshots.</summary>
    public static async Task<int> Take()
    {
        await using var chromium = await Chromium.Start();
        await using var server = await DemoServer.Start();
        foreach (var shot in All)
        {
            await using var visit = await Visit.Start(chromium.Browser, new(server.Server.Address), shot.Look);
            await visit.Open(SitePages.Named(shot.Page).Path);
            visit.Own.Check();
            Console.WriteLine(await Picture.Take(visit.Page, Path.Combine(Sources.ReadmeScreenshots, shot.File + ".png"), shot.Whole));
        }
        return 0;
    }
}
