using System.Diagnostics.CodeAnalysis;

namespace Closemown.Quantities;

/// <summary>Units of speed of rotation.</summary>
public enum RotationUnit
{
    /// <summary>Turns a minute.</summary>
    PerMinute,

    /// <summary>Turns a second.</summary>
    PerSecond,
}

/// <summary>A speed of rotation as typed: <c>2200 rpm</c>, <c>2200 /min</c>; not below zero.</summary>
public readonly record struct Rotation
{
    internal static readonly UnitTable<RotationUnit> Units = new(
        "speed of rotation",
        "2200 rpm",
        new(RotationUnit.PerMinute, Exact.Of(1, 1), "rpm", "rpm", static _ => 1,
            "rpm", "/min", "1/min", "r/min", "rev/min", "min-1", "min^-1"),
        new(RotationUnit.PerSecond, Exact.Of(60, 1), "/s", "/s", static _ => 2, "/s", "1/s", "rps", "rev/s", "r/s"));

    private readonly string? _typed;

    private Rotation(Reading<RotationUnit> reading, string typed)
    {
        PerMinute = reading.Value.ToDouble();
        Unit = reading.Unit;
        _typed = typed;
    }

    /// <summary>Turns a minute, rounded once.</summary>
    public double PerMinute { get; }

    /// <summary>The unit typed, or the default where none was.</summary>
    public RotationUnit Unit { get; }

    /// <summary>The text as typed.</summary>
    public string Typed => _typed ?? "";

    /// <summary>Reads a speed of rotation. Never throws.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="style">The person's way of writing.</param>
    /// <param name="defaultUnit">The unit of a bare number; null when a unit must be typed.</param>
    /// <param name="value">The speed of rotation.</param>
    /// <param name="fault">Why not.</param>
    public static bool TryParse(
        string? text, WritingStyle style, RotationUnit? defaultUnit, out Rotation value, [NotNullWhen(false)] out ParseFault? fault)
    {
        ArgumentNullException.ThrowIfNull(style);
        text ??= "";
        bool read = QuantityReader.TryRead(text, style, Units, defaultUnit, out Reading<RotationUnit> reading, out fault);
        value = read ? new Rotation(reading, text) : default;
        return read;
    }

    /// <summary>Reads a speed of rotation.</summary>
    /// <exception cref="QuantityFormatException">The text is not a speed of rotation.</exception>
    public static Rotation Parse(string? text, WritingStyle style, RotationUnit? defaultUnit = RotationUnit.PerMinute) =>
        TryParse(text, style, defaultUnit, out Rotation value, out ParseFault? fault) ? value : throw new QuantityFormatException(fault);

    /// <summary>Prints in a unit, rounded sensibly, or to exactly so many decimals.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static string Print(double perMinute, RotationUnit unit, WritingStyle style, int? decimals = null)
    {
        ArgumentNullException.ThrowIfNull(style);
        return QuantityPrinter.Print(perMinute, Units[unit], style, decimals);
    }

    /// <summary>Prints in a unit with as many digits as read back to the same double, bit for bit.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static string PrintRoundTrip(double perMinute, RotationUnit unit, WritingStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        return QuantityPrinter.RoundTrip(perMinute, Units[unit], style);
    }
}
