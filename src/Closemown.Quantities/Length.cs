using System.Diagnostics.CodeAnalysis;

namespace Closemown.Quantities;

/// <summary>Units of length.</summary>
public enum LengthUnit
{
    /// <summary>Millimetre.</summary>
    Mm,

    /// <summary>Micrometre, 0.001 mm.</summary>
    Um,

    /// <summary>Hundredth of a millimetre, 10 µm.</summary>
    HundredthMm,

    /// <summary>Thousandth of an inch, 25.4 µm; also typed <c>mil</c>.</summary>
    Thou,

    /// <summary>Inch, 25.4 mm.</summary>
    Inch,

    /// <summary>Centimetre.</summary>
    Cm,

    /// <summary>Metre.</summary>
    M,

    /// <summary>Foot, 304.8 mm.</summary>
    Foot,
}

/// <summary>A length as typed: <c>5/32 in</c>, <c>0.156"</c>, <c>4 mm</c>, <c>2 thou</c>, <c>25 µm</c>. Any finite value, below zero
/// too.</summary>
public readonly record struct Length
{
    /// <summary>One inch is exactly 25.4 mm (NIST SP 811 (2008) appendix B; ISO 80000-3).</summary>
    internal static readonly UnitTable<LengthUnit> Units = new(
        "length",
        "4 mm or 5/32 in",
        new(LengthUnit.Mm, Exact.Of(1, 1), "mm", "mm", static x => Math.Abs(x) < 1 ? 3 : 2,
            "mm", "millimetre", "millimetres", "millimeter", "millimeters"),
        new(LengthUnit.Um, Exact.Of(1, 1000), "µm", "µm", static x => Math.Abs(x) < 10 ? 1 : 0,
            "µm", "um", "micron", "microns", "micrometre", "micrometres", "micrometer", "micrometers"),
        new(LengthUnit.HundredthMm, Exact.Of(1, 100), "hundredth mm", "hundredths mm", static _ => 1,
            "hundredths mm", "hundredth mm", "hundredth", "hundredths", "hundredth of a mm", "hundredths of a mm",
                "hundredths of a millimetre", "hundredths of a millimeter"),
        new(LengthUnit.Thou, Exact.Of(254, 10000), "thou", "thou", static _ => 1,
            "thou", "thous", "thousandth", "thousandths", "thousandth of an inch", "thousandths of an inch", "mil", "mils"),
        new(LengthUnit.Inch, Exact.Of(254, 10), "in", "in", static x => Math.Abs(x) < 0.1 ? 4 : 3, "in", "inch", "inches", "\"", "''"),
        new(LengthUnit.Cm, Exact.Of(10, 1), "cm", "cm", static _ => 2, "cm", "centimetre", "centimetres", "centimeter", "centimeters"),
        new(LengthUnit.M, Exact.Of(1000, 1), "m", "m", static _ => 2, "m", "metre", "metres", "meter", "meters"),
        new(LengthUnit.Foot, Exact.Of(3048, 10), "ft", "ft", static _ => 2, "ft", "foot", "feet", "'"))
    {
        Signed = true,
    };

    private readonly string? _typed;

    private Length(Exact mm, LengthUnit unit, string typed, string? note)
    {
        Mm = mm.ToDouble();
        Um = (mm * Exact.Of(1000, 1)).ToDouble();
        Unit = unit;
        _typed = typed;
        Note = note;
    }

    /// <summary>The length in mm, rounded once.</summary>
    public double Mm { get; }

    /// <summary>The length in µm, rounded once.</summary>
    public double Um { get; }

    /// <summary>The unit typed, or the default where none was.</summary>
    public LengthUnit Unit { get; }

    /// <summary>The text as typed.</summary>
    public string Typed => _typed ?? "";

    /// <summary>What the person should be told about how the text was taken, or null: that a mil is a thousandth of an inch.</summary>
    public string? Note { get; }

    /// <summary>How a unit is written behind a number.</summary>
    public static string Symbol(LengthUnit unit) => Units[unit].Shown;

    /// <summary>The length in a unit.</summary>
    public double In(LengthUnit unit) => Units[unit].FromBase(Exact.Of(Mm)).ToDouble();

    /// <summary>Reads a length. Never throws.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="style">The person's way of writing.</param>
    /// <param name="defaultUnit">The unit of a bare number; null when a unit must be typed.</param>
    /// <param name="value">The length.</param>
    /// <param name="fault">Why not.</param>
    public static bool TryParse(
        string? text, WritingStyle style, LengthUnit? defaultUnit, out Length value, [NotNullWhen(false)] out ParseFault? fault)
    {
        ArgumentNullException.ThrowIfNull(style);
        text ??= "";
        value = default;
        if (!QuantityReader.TryRead(text, style, Units, defaultUnit, out Reading<LengthUnit> reading, out fault))
            return false;
        fault = FractionOfMm(text, style, reading);
        if (fault is not null)
            return false;
        string unit = Spelling.Normal(reading.UnitText).ToUpperInvariant();
        string? note = unit is "MIL" or "MILS" ? "mil was taken as a thousandth of an inch (25.4 µm), not a millimetre." : null;
        value = new Length(reading.Value, reading.Unit, text, note);
        return true;
    }

    /// <summary>Reads a length.</summary>
    /// <exception cref="QuantityFormatException">The text is not a length.</exception>
    public static Length Parse(string? text, WritingStyle style, LengthUnit? defaultUnit = null) =>
        TryParse(text, style, defaultUnit, out Length value, out ParseFault? fault) ? value : throw new QuantityFormatException(fault);

    /// <summary>Prints mm in a unit, rounded sensibly: mm to 0.01 (0.001 below 1 mm), µm to 1 (0.1 below 10), thou and hundredths to
    /// 0.1, inches to 0.001 (0.0001 below 0.1 in).</summary>
    /// <param name="mm">Millimetres; finite.</param>
    /// <param name="unit">The unit to print.</param>
    /// <param name="style">The person's way of writing.</param>
    /// <param name="decimals">Exactly so many decimals, or null for the sensible ones without ending zeros.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static string Print(double mm, LengthUnit unit, WritingStyle style, int? decimals = null)
    {
        ArgumentNullException.ThrowIfNull(style);
        return QuantityPrinter.Print(mm, Units[unit], style, decimals);
    }

    /// <summary>Prints mm in a unit with as many digits as read back to the same double, bit for bit (minus zero reads back as
    /// zero).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static string PrintRoundTrip(double mm, LengthUnit unit, WritingStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        return QuantityPrinter.RoundTrip(mm, Units[unit], style);
    }

    // Eighths and finer without a unit are inch sizes: nobody writes 5/32 of a millimetre.
    private static ParseFault? FractionOfMm(string text, WritingStyle style, Reading<LengthUnit> reading)
    {
        if (reading.UnitText.Length > 0 || reading.Unit is LengthUnit.Inch)
            return null;
        var reader = new NumberReader(text, 0, style.DecimalSign);
        if (!reader.TryRead(out _, out _) || reader.FractionOf < 8)
            return null;
        string shown = text.Trim();
        return ParseFault.At(
            text, text.IndexOf(shown, StringComparison.Ordinal), shown.Length, "A fraction like this is usually a size in inches.",
            $"Write {shown} in, or {shown} {Units[reading.Unit].ShownMany}.");
    }
}
