namespace Closemown.Quantities;

/// <summary>The unit in which a person reads the gap between blade and bedknife.</summary>
public enum GapUnit
{
    /// <summary>µm.</summary>
    Micrometre,

    /// <summary>Thousandths of an inch, 25.4 µm.</summary>
    Thou,

    /// <summary>Hundredths of a millimetre, 10 µm.</summary>
    HundredthMm,
}

/// <summary>The unit in which a person reads heights.</summary>
public enum HeightUnit
{
    /// <summary>Millimetres.</summary>
    Mm,

    /// <summary>Inches with decimals: 0.156 in.</summary>
    InchDecimal,

    /// <summary>Inches with fractions: 5/32 in.</summary>
    InchFraction,
}

/// <summary>Whose words of the trade a person reads.</summary>
public enum Wording
{
    /// <summary>Reel head, backlap, dullness, gray.</summary>
    US,

    /// <summary>Cassette, back-lap, bluntness, grey.</summary>
    UK,
}

/// <summary>How one person writes and reads. It is handed in by the caller, never taken from the machine.</summary>
public sealed record WritingStyle
{
    /// <summary>Decimal point, µm, mm, US words: also the form that programs read.</summary>
    public static WritingStyle Plain { get; } = new();

    /// <summary>Decimal point, thou, fractions of an inch, US words, and feet, pounds and °F.</summary>
    public static WritingStyle American { get; } = new() { Gap = GapUnit.Thou, Height = HeightUnit.InchFraction };

    /// <summary>Decimal point, hundredths of a millimetre, mm, UK words.</summary>
    public static WritingStyle British { get; } = new() { Gap = GapUnit.HundredthMm, Words = Wording.UK };

    /// <summary>Decimal comma, hundredths of a millimetre, mm, UK words.</summary>
    public static WritingStyle CommaMetric { get; } = new() { DecimalSign = ',', Gap = GapUnit.HundredthMm, Words = Wording.UK };

    private readonly char _decimalSign = '.';

    /// <summary>The decimal sign, '.' (default) or ','.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Any other sign.</exception>
    public char DecimalSign
    {
        get => _decimalSign;
        init => _decimalSign = value is '.' or ','
            ? value
            : throw new ArgumentOutOfRangeException(nameof(value), value, "The decimal sign is '.' or ','.");
    }

    /// <summary>The unit of the gap; default µm.</summary>
    public GapUnit Gap { get; init; }

    /// <summary>The unit of heights; default mm.</summary>
    public HeightUnit Height { get; init; }

    /// <summary>The words of the trade; default US.</summary>
    public Wording Words { get; init; }

    private readonly TurfUnits? _turf;

    /// <summary>Units of areas, distances, warmth, rain and what is spread: those of the US where US words go with inches, else metric, unless told.</summary>
    public TurfUnits Turf
    {
        get => _turf ?? (Words == Wording.US && Height != HeightUnit.Mm ? TurfUnits.American : TurfUnits.Metric);
        init => _turf = value;
    }
}
