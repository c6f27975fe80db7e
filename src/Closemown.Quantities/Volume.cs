using System.Diagnostics.CodeAnalysis;

namespace Closemown.Quantities;

/// <summary>Units of volume.</summary>
public enum VolumeUnit
{
    /// <summary>Litres.</summary>
    Litre,

    /// <summary>Millilitres.</summary>
    Millilitre,

    /// <summary>Cubic feet, 28.316846592 litres.</summary>
    CubicFoot,
}

/// <summary>A volume as typed: <c>12 l</c>, <c>12 litres</c>, <c>0.5 cu ft</c>; not below zero. Gallons and buckets differ from place to place and are not read.</summary>
public readonly record struct Volume
{
    internal static readonly UnitTable<VolumeUnit> Units = new(
        "volume",
        "12 litres",
        new(VolumeUnit.Litre, Exact.Of(1, 1), "l", "l", static _ => 1, "l", "ltr", "litre", "litres", "liter", "liters", "dm3"),
        new(VolumeUnit.Millilitre, Exact.Of(1, 1000), "ml", "ml", static _ => 0, "ml", "millilitre", "millilitres", "milliliter", "milliliters"),
        new(VolumeUnit.CubicFoot, Exact.Of(28316846592, 1000000000), "cu ft", "cu ft", static _ => 2, "cu ft", "cuft", "ft3", "ft^3", "cubic foot", "cubic feet"));

    private readonly string? _typed;

    private Volume(Reading<VolumeUnit> reading, string typed)
    {
        Litres = reading.Value.ToDouble();
        Unit = reading.Unit;
        _typed = typed;
    }

    /// <summary>Litres, rounded once.</summary>
    public double Litres { get; }

    /// <summary>The unit typed, or the default where none was.</summary>
    public VolumeUnit Unit { get; }

    /// <summary>The text as typed.</summary>
    public string Typed => _typed ?? "";

    /// <summary>Reads a volume. Never throws.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="style">The person's way of writing.</param>
    /// <param name="defaultUnit">The unit of a bare number; null when a unit must be typed.</param>
    /// <param name="value">The volume.</param>
    /// <param name="fault">Why not.</param>
    public static bool TryParse(
        string? text, WritingStyle style, VolumeUnit? defaultUnit, out Volume value, [NotNullWhen(false)] out ParseFault? fault)
    {
        ArgumentNullException.ThrowIfNull(style);
        text ??= "";
        bool read = QuantityReader.TryRead(text, style, Units, defaultUnit, out Reading<VolumeUnit> reading, out fault);
        value = read ? new Volume(reading, text) : default;
        return read;
    }

    /// <summary>Reads a volume.</summary>
    /// <exception cref="QuantityFormatException">The text is not a volume.</exception>
    public static Volume Parse(string? text, WritingStyle style, VolumeUnit? defaultUnit = VolumeUnit.Litre) =>
        TryParse(text, style, defaultUnit, out Volume value, out ParseFault? fault) ? value : throw new QuantityFormatException(fault);

    /// <summary>Prints in a unit, rounded sensibly, or to exactly so many decimals.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static string Print(double litres, VolumeUnit unit, WritingStyle style, int? decimals = null)
    {
        ArgumentNullException.ThrowIfNull(style);
        return QuantityPrinter.Print(litres, Units[unit], style, decimals);
    }

    /// <summary>Prints in a unit with as many digits as read back to the same double, bit for bit.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static string PrintRoundTrip(double litres, VolumeUnit unit, WritingStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        return QuantityPrinter.RoundTrip(litres, Units[unit], style);
    }
}
