using System.Text.Json.Nodes;

namespace Closemown.Tests.Practice;

/// <summary>What is told to the pipe about one unit's height, in few words.</summary>
internal static class HeightTold
{
    public const string Nuts = """{"kind":"locked"}""";

    public static string Gauge(double left, double right, string more = "") => FormattableString.Invariant($$"""{"kind":"gauge","leftMm":{{Math.Round(left, 3)}},"rightMm":{{Math.Round(right, 3)}}{{more}}}""");

    public static string Screw(double left, double right) => FormattableString.Invariant($$"""{"kind":"screw","leftTurns":{{left}},"rightTurns":{{right}}}""");

    public static string Mow(string more = "") => $$"""{"kind":"mow","hours":0.5{{more}}}""";

    /// <summary>Time as ", at" of an entry: days after the first of May.</summary>
    public static string On(double days) => $$""","at":"{{new DateTimeOffset(2026, 5, 1, 9, 0, 0, TimeSpan.Zero).AddDays(days):yyyy-MM-dd'T'HH:mm:ss'Z'}}" """.TrimEnd();

    /// <summary>An entry that is nothing to the height, so many days later: the pipe has no other clock.</summary>
    public static string Later(double days) => $$"""{"kind":"look","area":"green","colour":"green"{{On(days)}}}""";

    public static JsonNode Height(this Piped pipe, string more = "") => pipe.Say($$"""{"ask":"height"{{more}}}""")["height"]!;

    public static JsonNode Aim(this Piped pipe, double benchMm, double probability = 0.85, double tolMm = 0.05) =>
        pipe.Next(FormattableString.Invariant($$""","aim":{"benchMm":{{benchMm}},"probability":{{probability}},"tolMm":{{tolMm}}}"""));

    public static string Do(this JsonNode next) => (string)next["do"]!;

    /// <summary>All that a step says: the sentence and its reasons.</summary>
    public static string Said(this JsonNode next) => string.Join(' ', next["why"]!.AsArray().Select(w => (string)w!).Prepend((string)next["say"]!));
}
