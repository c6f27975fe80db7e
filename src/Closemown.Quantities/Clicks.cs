using System.Diagnostics.CodeAnalysis;

namespace Closemown.Quantities;

/// <summary>What one step of an adjuster is called on this unit.</summary>
public enum ClickStep
{
    /// <summary>A detent that clicks.</summary>
    Click,

    /// <summary>A flat of a nut.</summary>
    Flat,

    /// <summary>A notch.</summary>
    Notch,
}

/// <summary>
/// Steps of an adjuster as typed: <c>3 clicks</c>, <c>1½ clicks</c>, <c>half a click</c>, <c>2 clicks out</c>; whole or half steps.
/// Above zero is in
/// (towards each other), below zero out. No length: for that the unit's click size must be known.
/// </summary>
public readonly record struct Clicks
{
    internal static readonly UnitTable<ClickStep> Steps = new(
        "number of clicks",
        "2 clicks or 1½ clicks",
        new(ClickStep.Click, Exact.Of(1, 1), "click", "clicks", static _ => 1, "click", "clicks", "detent", "detents"),
        new(ClickStep.Flat, Exact.Of(1, 1), "flat", "flats", static _ => 1, "flat", "flats"),
        new(ClickStep.Notch, Exact.Of(1, 1), "notch", "notches", static _ => 1, "notch", "notches"))
    {
        Signed = true,
    };

    private static readonly Exact Two = Exact.Of(2, 1);
    private readonly string? _typed;

    private Clicks(double count, ClickStep step, string typed)
    {
        Count = count;
        Step = step;
        _typed = typed;
    }

    /// <summary>Steps, a multiple of ½; above zero is in.</summary>
    public double Count { get; }

    /// <summary>What the step was called.</summary>
    public ClickStep Step { get; }

    /// <summary>The text as typed.</summary>
    public string Typed => _typed ?? "";

    /// <summary>Reads clicks; a bare number is clicks. Never throws.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="style">The person's way of writing.</param>
    /// <param name="value">The clicks.</param>
    /// <param name="fault">Why not.</param>
    public static bool TryParse(string? text, WritingStyle style, out Clicks value, [NotNullWhen(false)] out ParseFault? fault)
    {
        ArgumentNullException.ThrowIfNull(style);
        text ??= "";
        value = default;
        const string Example = "2 clicks or 1½ clicks";
        if (!QuantityReader.TryStart(text, Steps.Quantity, Example, out fault)
            || !QuantityReader.TryNumber(text, 0, style, Steps.Quantity, Example, out Exact number, out int at, out NumberReader reader,
                out fault))
            return false;
        int end = Direction(text, at, out int direction);
        if (!QuantityReader.TryUnit(text, at, end, Steps, ClickStep.Click, out UnitRow<ClickStep>? row, out fault))
            return false;
        if (direction != 0 && reader.Signed)
        {
            fault = ParseFault.At(text, end, text.TrimEnd().Length - end, "A sign and a direction are given.",
                "Write either -2 clicks or 2 clicks out.");
            return false;
        }

        double halves = (number * Two).ToDouble();
        if (!(Math.Abs(halves) <= 2000))
        {
            fault = ParseFault.At(text, 0, at, "That is more than a thousand clicks.", $"Write {Steps.Example}.");
            return false;
        }

        if (halves != Math.Round(halves))
        {
            (double below, double above) = (Math.Floor(halves) / 2, Math.Ceiling(halves) / 2);
            int start = text.Length - text.TrimStart().Length;
            fault = ParseFault.At(
                text, start, at - start, "Clicks are whole or half steps.",
                    $"Write {Print(below, style, row.Unit)} or {Print(above, style, row.Unit)}.");
            return false;
        }

        double count = direction < 0 && halves != 0 ? -halves / 2 : halves / 2;
        value = new Clicks(count, row.Unit, text);
        return true;
    }

    /// <summary>Reads clicks; a bare number is clicks.</summary>
    /// <exception cref="QuantityFormatException">The text is no number of clicks.</exception>
    public static Clicks Parse(string? text, WritingStyle style) =>
        TryParse(text, style, out Clicks value, out ParseFault? fault) ? value : throw new QuantityFormatException(fault);

    /// <summary>Prints to the nearest half step: <c>1½ clicks</c>, <c>-1 click</c>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number, or beyond a million.</exception>
    public static string Print(double count, WritingStyle style, ClickStep step = ClickStep.Click)
    {
        ArgumentNullException.ThrowIfNull(style);
        if (!(Math.Abs(count) <= 1e6))
            throw new ArgumentOutOfRangeException(nameof(count), count, "Clicks lie between -1000000 and 1000000.");
        int halves = (int)Math.Round(Math.Abs(count) * 2, MidpointRounding.AwayFromZero);
        string whole = (halves / 2).ToString(System.Globalization.CultureInfo.InvariantCulture);
        string number = halves % 2 == 0 ? whole : halves == 1 ? "½" : whole + "½";
        UnitRow<ClickStep> row = Steps[step];
        return (count < 0 && halves > 0 ? "-" : "") + number + " " + (halves is 1 or 2 ? row.Shown : row.ShownMany);
    }

    /// <summary>Prints with the direction: <c>1 click in</c>, <c>2 clicks out</c>, <c>0 clicks</c>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number, or beyond a million.</exception>
    public static string PrintDirected(double count, WritingStyle style, ClickStep step = ClickStep.Click)
    {
        string size = Print(Math.Abs(count), style, step);
        return Math.Round(Math.Abs(count) * 2, MidpointRounding.AwayFromZero) == 0 ? size : size + (count > 0 ? " in" : " out");
    }

    private static int Direction(string text, int at, out int direction)
    {
        string trimmed = text.TrimEnd();
        direction = 0;
        foreach ((string word, int sign) in new[] { ("in", 1), ("out", -1) })
        {
            if (!trimmed.EndsWith(word, StringComparison.OrdinalIgnoreCase))
                continue;
            int start = trimmed.Length - word.Length;
            if (start <= at || !char.IsWhiteSpace(trimmed[start - 1]))
                continue;
            direction = sign;
            return start;
        }

        return text.Length;
    }
}
