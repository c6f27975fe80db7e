using System.Diagnostics.CodeAnalysis;

namespace Closemown.Quantities;

/// <summary>Units of paper weight.</summary>
public enum GrammageUnit
{
    /// <summary>Grams a square metre.</summary>
    GramPerSquareMetre,
}

/// <summary>The weight of a paper as typed: <c>80 gsm</c>, <c>80 g/m2</c>; not below zero.</summary>
public readonly record struct Grammage
{
    internal static readonly UnitTable<GrammageUnit> Units = new(
        "paper weight",
        "80 gsm",
        new UnitRow<GrammageUnit>(GrammageUnit.GramPerSquareMetre, Exact.Of(1, 1), "g/m²", "g/m²", static _ => 1,
            "gsm", "g/m2", "g/m^2", "g/sqm"));

    private readonly string? _typed;

    private Grammage(Reading<GrammageUnit> reading, string typed)
    {
        Gsm = reading.Value.ToDouble();
        Unit = reading.Unit;
        _typed = typed;
    }

    /// <summary>g/m², rounded once.</summary>
    public double Gsm { get; }

    /// <summary>The unit typed, or the default where none was.</summary>
    public GrammageUnit Unit { get; }

    /// <summary>The text as typed.</summary>
    public string Typed => _typed ?? "";

    /// <summary>Reads a paper weight. Never throws.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="style">The person's way of writing.</param>
    /// <param name="defaultUnit">The unit of a bare number; null when a unit must be typed.</param>
    /// <param name="value">The paper weight.</param>
    /// <param name="fault">Why not.</param>
    public static bool TryParse(
        string? text, WritingStyle style, GrammageUnit? defaultUnit, out Grammage value, [NotNullWhen(false)] out ParseFault? fault)
    {
        ArgumentNullException.ThrowIfNull(style);
        text ??= "";
        bool read = QuantityReader.TryRead(text, style, Units, defaultUnit, out Reading<GrammageUnit> reading, out fault);
        value = read ? new Grammage(reading, text) : default;
        return read;
    }

    /// <summary>Reads a paper weight.</summary>
    /// <exception cref="QuantityFormatException">The text is not a paper weight.</exception>
    public static Grammage Parse(string? text, WritingStyle style, GrammageUnit? defaultUnit = GrammageUnit.GramPerSquareMetre) =>
        TryParse(text, style, defaultUnit, out Grammage value, out ParseFault? fault) ? value : throw new QuantityFormatException(fault);

    /// <summary>Prints in a unit, rounded sensibly, or to exactly so many decimals.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static string Print(double gsm, GrammageUnit unit, WritingStyle style, int? decimals = null)
    {
        ArgumentNullException.ThrowIfNull(style);
        return QuantityPrinter.Print(gsm, Units[unit], style, decimals);
    }

    /// <summary>Prints in a unit with as many digits as read back to the same double, bit for bit.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static string PrintRoundTrip(double gsm, GrammageUnit unit, WritingStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        return QuantityPrinter.RoundTrip(gsm, Units[unit], style);
    }
}
