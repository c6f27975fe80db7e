using System.Globalization;
using Closemown.Quantities;
using Closemown.Steel;

namespace Closemown.Advice;

/// <summary>Steps said as a person would say them. {reel}, {bedknife}, {gap}, {bluntness}, {step} and {um:…} stand for the person's own words and units.</summary>
internal static class StepSpeech
{
    private static readonly string[] Places = ["left", "centre", "right"];

    public static string Check(string kind, IReadOnlyList<int> at) => kind switch
    {
        "paper-cut" => $"Feed the paper strip straight in {At(at)}, {{reel}} turned forward slowly: does it cut, nick or fold?",
        "paper-drag" => $"Lay the strip flat between blade and {{bedknife}} {At(at)} and pull: tight, slight or loose?",
        "contact" => $"Turn the {{reel}} backwards by hand, slowly, and feel {At(at)}: nothing, a light touch, a heavy one, or one once a turn?",
        "torch" => $"Shine a torch along the edges {At(at)}: no bright line, a thin one or a wide one?",
        "feeler" => $"Try feeler leaves {At(at)}: the thickest that goes, the thinnest that does not.",
        "fit" => "Feel both bearings for play, try the screws of the {bedknife}, the adjusters, and look along the blades.",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "not a check"),
    };

    public static string Clicks(int left, int right, UnitDescription unit)
    {
        var turn = unit.InTurns is { } way && (left > 0 || right > 0) ? $" (in is {way})" : "";
        if (left == right) return $"{Steps(left)} {Way(left)} on both sides{turn}.";
        if (left == 0) return $"{Steps(right)} {Way(right)} on the right{turn}; leave the left.";
        if (right == 0) return $"{Steps(left)} {Way(left)} on the left{turn}; leave the right.";
        return $"{Steps(left)} {Way(left)} on the left, {LowSteps(right)} {Way(right)} on the right{turn}.";
    }

    public static string Lap(double minutes, double? grit) => Lapping("{Lap}", minutes, grit);

    /// <summary>The same within a sentence.</summary>
    public static string LapLow(double minutes, double? grit) => Lapping("{lap}", minutes, grit);

    private static string Lapping(string lap, double minutes, double? grit) =>
        $"{lap} for {Phrasing.Number(minutes, "0.#")} {(minutes == 1 ? "minute" : "minutes")}{(grit is { } g ? $" with {g.ToString("0", CultureInfo.InvariantCulture)} compound" : "")}, then wash it off.";

    public static string Um(double um) => $"{{um:{um.ToString("R", CultureInfo.InvariantCulture)}}}";

    /// <summary>A gap, rounded to what a hand can set; one below nothing is a touch.</summary>
    public static string Gap(double um) => $"{{gap:{um.ToString("R", CultureInfo.InvariantCulture)}}}";

    /// <summary>How far off a gap may be.</summary>
    public static string Off(double um) => $"{{off:{um.ToString("R", CultureInfo.InvariantCulture)}}}";

    public static string InHundred(double p) => Chances.InHundred(p);

    public static string Chance(double p) => Chances.Word(p);

    public static string At(IReadOnlyList<int> at) => at.Count == 3 ? "at all three places"
        : at is [0, 2] ? "at both ends"
        : string.Join(" and ", at.Select(s => s == 1 ? "in the {centre}" : $"at the {Places[s]}"));

    public static string Place(int station) => station == 1 ? "in the {centre}" : $"at the {Places[station]}";

    public static string Days(double days) => days switch
    {
        < 1.5 => "tomorrow",
        < 10 => $"in about {Math.Round(days).ToString(CultureInfo.InvariantCulture)} days",
        < 60 => $"in about {Math.Round(days / 7).ToString(CultureInfo.InvariantCulture)} weeks",
        _ => $"in about {Math.Round(days / 30).ToString(CultureInfo.InvariantCulture)} months",
    };

    private static string Steps(int n) => Math.Abs(n) switch { 1 => "One {step}", 2 => "Two {step}s", var k => $"{k.ToString(CultureInfo.InvariantCulture)} {{step}}s" };

    private static string LowSteps(int n) => char.ToLowerInvariant(Steps(n)[0]) + Steps(n)[1..];

    private static string Way(int n) => n > 0 ? "in" : "out";
}
