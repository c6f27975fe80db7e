namespace Closemown.Tests.Web;

/// <summary>Entries with all that an entry has, so that two writers write the same.</summary>
internal static class Lines
{
    private static readonly string[] Bodies =
    [
        "\"kind\":\"unit\",\"unit\":\"mower\",\"blades\":10",
        "\"kind\":\"area\",\"area\":\"green\",\"grass\":\"cool\",\"m2\":200,\"lat\":51.4321,\"lon\":-2.8765",
        "\"kind\":\"fit\",\"unit\":\"mower\",\"playLeft\":\"none\",\"playRight\":\"none\",\"knifeScrews\":\"tight\"",
        "\"kind\":\"paper-cut\",\"unit\":\"mower\",\"left\":\"cuts\",\"centre\":\"cuts\",\"right\":\"folds\"",
        "\"kind\":\"gauge\",\"unit\":\"mower\",\"leftMm\":5.1,\"rightMm\":5.2",
        "\"kind\":\"mow\",\"unit\":\"mower\",\"area\":\"green\",\"hours\":0.5",
        "\"kind\":\"canopy\",\"area\":\"green\",\"mm\":[6.1,6.3,6.0],\"when\":\"before\"",
        "\"kind\":\"contact\",\"unit\":\"mower\",\"left\":\"none\",\"right\":\"light\"",
    ];

    public static int Count => Bodies.Length;

    public static string Line(int n) => Of(n, Bodies[n]);

    public static string Mow(int n) => Of(n, "\"kind\":\"mow\",\"unit\":\"mower\",\"hours\":0.3");

    public static IEnumerable<string> All => Enumerable.Range(0, Count).Select(Line);

    private static string Of(int n, string body) =>
        $$"""{"v":1,"id":"019de28d-3c00-7000-8000-{{n:x12}}","at":"{{new DateTimeOffset(2026, 6, 1, 8, 0, 0, TimeSpan.Zero).AddMinutes(n):yyyy-MM-ddTHH:mm:ss}}+00:00",{{body}}}""";
}
