using System.Diagnostics.CodeAnalysis;

namespace Closemown.Quantities;

/// <summary>Units of area.</summary>
public enum AreaUnit
{
    /// <summary>Square metres.</summary>
    SquareMetre,

    /// <summary>Square feet, 0.09290304 m².</summary>
    SquareFoot,

    /// <summary>Square yards, 0.83612736 m².</summary>
    SquareYard,
}

/// <summary>An area as typed: <c>120 m²</c>, <c>1300 sq ft</c>; not below zero.</summary>
public readonly record struct Area
{
    internal static readonly UnitTable<AreaUnit> Units = new(
        "area",
        "120 m2 or 1300 sq ft",
        new(AreaUnit.SquareMetre, Exact.Of(1, 1), "m²", "m²", static _ => 1,
            "m2", "m^2", "sq m", "sqm", "square metre", "square metres", "square meter", "square meters"),
        new(AreaUnit.SquareFoot, Exact.Of(9290304, 100000000), "sq ft", "sq ft", static _ => 1,
            "sq ft", "sqft", "ft2", "ft^2", "square foot", "square feet"),
        new(AreaUnit.SquareYard, Exact.Of(83612736, 100000000), "sq yd", "sq yd", static _ => 1,
            "sq yd", "sqyd", "yd2", "yd^2", "square yard", "square yards"));

    private readonly string? _typed;

    private Area(Reading<AreaUnit> reading, string typed)
    {
        SquareMetres = reading.Value.ToDouble();
        Unit = reading.Unit;
        _typed = typed;
    }

    /// <summary>m², rounded once.</summary>
    public double SquareMetres { get; }

    /// <summary>The unit typed, or the default where none was.</summary>
    public AreaUnit Unit { get; }

    /// <summary>The text as typed.</summary>
    public string Typed => _typed ?? "";

    /// <summary>Reads an area. Never throws.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="style">The person's way of writing.</param>
    /// <param name="defaultUnit">The unit of a bare number; null when a unit must be typed.</param>
    /// <param name="value">The area.</param>
    /// <param name="fault">Why not.</param>
    public static bool TryParse(
        string? text, WritingStyle style, AreaUnit? defaultUnit, out Area value, [NotNullWhen(false)] out ParseFault? fault)
    {
        ArgumentNullException.ThrowIfNull(style);
        text ??= "";
        bool read = QuantityReader.TryRead(text, style, Units, defaultUnit, out Reading<AreaUnit> reading, out fault);
        value = read ? new Area(reading, text) : default;
        return read;
    }

    /// <summary>Reads an area.</summary>
    /// <exception cref="QuantityFormatException">The text is not an area.</exception>
    public static Area Parse(string? text, WritingStyle style, AreaUnit? defaultUnit = null) =>
        TryParse(text, style, defaultUnit, out Area value, out ParseFault? fault) ? value : throw new QuantityFormatException(fault);

    /// <summary>Prints in a unit, rounded sensibly, or to exactly so many decimals.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static string Print(double squareMetres, AreaUnit unit, WritingStyle style, int? decimals = null)
    {
        ArgumentNullException.ThrowIfNull(style);
        return QuantityPrinter.Print(squareMetres, Units[unit], style, decimals);
    }

    /// <summary>Prints in a unit with as many digits as read back to the same double, bit for bit.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static string PrintRoundTrip(double squareMetres, AreaUnit unit, WritingStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        return QuantityPrinter.RoundTrip(squareMetres, Units[unit], style);
    }
}
