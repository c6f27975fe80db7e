using System.Diagnostics.CodeAnalysis;

namespace Closemown.Quantities;

/// <summary>Units of number.</summary>
public enum NumberUnit
{
    /// <summary>A bare number.</summary>
    One,

    /// <summary>Hundredths.</summary>
    Percent,
}

/// <summary>A plain number or a ratio as typed: <c>11</c>, <c>1/3</c>, <c>33 %</c>.</summary>
public readonly record struct Number
{
    internal static readonly UnitTable<NumberUnit> Units = new(
        "number",
        "0.33, 1/3 or 33 %",
        new(NumberUnit.One, Exact.Of(1, 1), "", "", static _ => 3, ""),
        new(NumberUnit.Percent, Exact.Of(1, 100), "%", "%", static _ => 1, "%", "pct", "percent", "per cent"))
    {
        Signed = true,
    };

    private readonly string? _typed;

    private Number(Reading<NumberUnit> reading, string typed)
    {
        Value = reading.Value.ToDouble();
        Unit = reading.Unit;
        _typed = typed;
    }

    /// <summary>The number, rounded once.</summary>
    public double Value { get; }

    /// <summary>The unit typed, or the default where none was.</summary>
    public NumberUnit Unit { get; }

    /// <summary>The text as typed.</summary>
    public string Typed => _typed ?? "";

    /// <summary>Reads a number. Never throws.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="style">The person's way of writing.</param>
    /// <param name="defaultUnit">The unit of a bare number; null is the number itself.</param>
    /// <param name="value">The number.</param>
    /// <param name="fault">Why not.</param>
    public static bool TryParse(
        string? text, WritingStyle style, NumberUnit? defaultUnit, out Number value, [NotNullWhen(false)] out ParseFault? fault)
    {
        ArgumentNullException.ThrowIfNull(style);
        text ??= "";
        bool read = QuantityReader.TryRead(text, style, Units, defaultUnit ?? NumberUnit.One, out Reading<NumberUnit> reading, out fault);
        value = read ? new Number(reading, text) : default;
        return read;
    }

    /// <summary>Reads a number.</summary>
    /// <exception cref="QuantityFormatException">The text is not a number.</exception>
    public static Number Parse(string? text, WritingStyle style, NumberUnit? defaultUnit = NumberUnit.One) =>
        TryParse(text, style, defaultUnit, out Number value, out ParseFault? fault) ? value : throw new QuantityFormatException(fault);

    /// <summary>Prints in a unit, rounded sensibly, or to exactly so many decimals.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static string Print(double value, NumberUnit unit, WritingStyle style, int? decimals = null)
    {
        ArgumentNullException.ThrowIfNull(style);
        return QuantityPrinter.Print(value, Units[unit], style, decimals);
    }

    /// <summary>Prints in a unit with as many digits as read back to the same double, bit for bit.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static string PrintRoundTrip(double value, NumberUnit unit, WritingStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        return QuantityPrinter.RoundTrip(value, Units[unit], style);
    }
}
