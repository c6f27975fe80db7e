using System.Globalization;

namespace Closemown.Advice;

/// <summary>Turns of a height screw said as people turn, with the number.</summary>
internal static class TurnSpeech
{
    /// <summary>Nearer than this to a fraction, a turn is that fraction: where a hand stops.</summary>
    private const double Exactly = 0.012;

    private const double Hair = 0.04, Sixteenth = 1.5 / 16;

    private static readonly string[] Eighths = ["", "an eighth of a turn", "a quarter turn", "three eighths of a turn", "half a turn", "five eighths of a turn", "three quarters of a turn", "seven eighths of a turn"];

    /// <summary>"Left up a quarter turn less a little (0.23 turn), right down an eighth of a turn (0.12 turn)."</summary>
    /// <param name="left">Turns of the left screw, + raises.</param>
    /// <param name="right">Turns of the right screw.</param>
    /// <param name="flats">Flats of the nut; null where they were not told.</param>
    public static string Both(double left, double right, int? flats)
    {
        if (left == 0) return $"Right screw {Way(right)} {Size(right, flats)}; leave the left.";
        if (right == 0) return $"Left screw {Way(left)} {Size(left, flats)}; leave the right.";
        return Math.Abs(left - right) < 0.005 ? $"Both screws {Way(left)} {Size(left, flats)}."
            : $"Left screw {Way(left)} {Size(left, flats)}, right screw {Way(right)} {Size(right, flats)}.";
    }

    /// <summary>A size: "one turn and a quarter turn (1.25 turns)", "one flat of the nut and a little (0.19 turn)".</summary>
    /// <param name="turns">Turns; the sign does not matter.</param>
    /// <param name="flats">Flats of the nut; null where they were not told.</param>
    public static string Size(double turns, int? flats = null)
    {
        var n = Math.Abs(turns);
        var number = $" ({N(n)} {(n <= 1 ? "turn" : "turns")})";
        if (flats is { } f && n < 1 && Math.Round(n * f) is var count and > 0 && Math.Abs((n * f) - count) <= 0.3)
            return $"{(count == 1 ? "one flat" : $"{count.ToString(CultureInfo.InvariantCulture)} flats")} of the nut{Off(n - (count / f))}{number}";
        if (n < Hair) return $"a hair{number}";
        if (n < Sixteenth) return $"a sixteenth of a turn{Off(n - (1.0 / 16))}{number}";
        var eighths = (int)Math.Round(n * 8);
        var (whole, part) = (eighths / 8, eighths % 8);
        var turnsSaid = whole switch { 0 => "", 1 => "one turn", 2 => "two turns", 3 => "three turns", _ => $"{whole.ToString(CultureInfo.InvariantCulture)} turns" };
        var said = whole == 0 ? Eighths[part] : part == 0 ? turnsSaid : $"{turnsSaid} and {Eighths[part].Replace(" of a turn", "", StringComparison.Ordinal).Replace(" turn", "", StringComparison.Ordinal)}";
        if (whole > 0 && part == 4) said = $"{turnsSaid} and a half";
        return said + Off(n - (eighths / 8.0)) + number;
    }

    private static string Off(double more) => Math.Abs(more) <= Exactly ? "" : more > 0 ? " and a little" : " less a little";

    private static string Way(double turns) => turns > 0 ? "up" : "down";

    private static string N(double n) => Phrasing.Number(n, "0.##");
}
