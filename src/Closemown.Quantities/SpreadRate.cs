using System.Diagnostics.CodeAnalysis;

namespace Closemown.Quantities;

/// <summary>Units of what is spread on a surface.</summary>
public enum SpreadRateUnit
{
    /// <summary>Grams a square metre.</summary>
    GramPerSquareMetre,

    /// <summary>Kilograms a square metre.</summary>
    KilogramPerSquareMetre,

    /// <summary>Kilograms a hectare, 0.1 g/m².</summary>
    KilogramPerHectare,

    /// <summary>Pounds a thousand square feet, 4.88243 g/m².</summary>
    PoundPerThousandSquareFeet,

    /// <summary>Pounds a square foot, 4882.43 g/m².</summary>
    PoundPerSquareFoot,
}

/// <summary>How much is spread on a surface, as typed: <c>1.5 g/m2</c>, <c>1 kg/m2</c>, <c>15 kg/ha</c>, <c>0.3 lb/1000 sq ft</c>; not below zero.</summary>
public readonly record struct SpreadRate
{
    internal static readonly UnitTable<SpreadRateUnit> Units = new(
        "rate",
        "1.5 g/m2 or 15 kg/ha",
        new(SpreadRateUnit.GramPerSquareMetre, Exact.Of(1, 1), "g/m²", "g/m²", static x => x < 1 ? 2 : 1, "g/m2", "g/m^2", "gsm", "g/sqm", "g per m2", "grams per square metre", "grams per square meter"),
        new(SpreadRateUnit.KilogramPerSquareMetre, Exact.Of(1000, 1), "kg/m²", "kg/m²", static _ => 2, "kg/m2", "kg/m^2", "kg/sqm", "kg per m2"),
        new(SpreadRateUnit.KilogramPerHectare, Exact.Of(1, 10), "kg/ha", "kg/ha", static _ => 1, "kg/ha", "kg per ha", "kg per hectare"),
        new(SpreadRateUnit.PoundPerThousandSquareFeet, Exact.Of(45359237, 9290304), "lb/1000 sq ft", "lb/1000 sq ft", static _ => 2,
            "lb/1000 sq ft", "lb/1000", "lb/1000 ft2", "lb/1000ft2", "lbs/1000 sq ft", "lbs/1000", "lb per 1000 sq ft"),
        new(SpreadRateUnit.PoundPerSquareFoot, Exact.Of(45359237000, 9290304), "lb/sq ft", "lb/sq ft", static _ => 2, "lb/sq ft", "lb/ft2", "lb/ft^2"));

    private readonly string? _typed;

    private SpreadRate(Reading<SpreadRateUnit> reading, string typed)
    {
        GramsPerSquareMetre = reading.Value.ToDouble();
        Unit = reading.Unit;
        _typed = typed;
    }

    /// <summary>g/m², rounded once.</summary>
    public double GramsPerSquareMetre { get; }

    /// <summary>The unit typed, or the default where none was.</summary>
    public SpreadRateUnit Unit { get; }

    /// <summary>The text as typed.</summary>
    public string Typed => _typed ?? "";

    /// <summary>Reads a rate. Never throws.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="style">The person's way of writing.</param>
    /// <param name="defaultUnit">The unit of a bare number; null when a unit must be typed.</param>
    /// <param name="value">The rate.</param>
    /// <param name="fault">Why not.</param>
    public static bool TryParse(
        string? text, WritingStyle style, SpreadRateUnit? defaultUnit, out SpreadRate value, [NotNullWhen(false)] out ParseFault? fault)
    {
        ArgumentNullException.ThrowIfNull(style);
        text ??= "";
        bool read = QuantityReader.TryRead(text, style, Units, defaultUnit, out Reading<SpreadRateUnit> reading, out fault);
        value = read ? new SpreadRate(reading, text) : default;
        return read;
    }

    /// <summary>Reads a rate.</summary>
    /// <exception cref="QuantityFormatException">The text is not a rate.</exception>
    public static SpreadRate Parse(string? text, WritingStyle style, SpreadRateUnit? defaultUnit = SpreadRateUnit.GramPerSquareMetre) =>
        TryParse(text, style, defaultUnit, out SpreadRate value, out ParseFault? fault) ? value : throw new QuantityFormatException(fault);

    /// <summary>Prints in a unit, rounded sensibly, or to exactly so many decimals.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static string Print(double gramsPerSquareMetre, SpreadRateUnit unit, WritingStyle style, int? decimals = null)
    {
        ArgumentNullException.ThrowIfNull(style);
        return QuantityPrinter.Print(gramsPerSquareMetre, Units[unit], style, decimals);
    }

    /// <summary>Prints in a unit with as many digits as read back to the same double, bit for bit.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static string PrintRoundTrip(double gramsPerSquareMetre, SpreadRateUnit unit, WritingStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        return QuantityPrinter.RoundTrip(gramsPerSquareMetre, Units[unit], style);
    }
}
