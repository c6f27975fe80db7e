using System.Diagnostics.CodeAnalysis;

namespace Closemown.Quantities;

/// <summary>Units of speed.</summary>
public enum SpeedUnit
{
    /// <summary>Metres a second.</summary>
    MetrePerSecond,

    /// <summary>Kilometres an hour.</summary>
    KilometrePerHour,

    /// <summary>Miles an hour, 0.44704 m/s.</summary>
    MilePerHour,

    /// <summary>Metres a minute.</summary>
    MetrePerMinute,

    /// <summary>Feet a minute.</summary>
    FootPerMinute,
}

/// <summary>A speed as typed: <c>4.8 km/h</c>, <c>3 mph</c>, <c>1.3 m/s</c>, <c>80 m/min</c>; not below zero.</summary>
public readonly record struct Speed
{
    internal static readonly UnitTable<SpeedUnit> Units = new(
        "speed",
        "4.8 km/h or 3 mph",
        new(SpeedUnit.MetrePerSecond, Exact.Of(1, 1), "m/s", "m/s", static _ => 2, "m/s", "mps", "m/sec"),
        new(SpeedUnit.KilometrePerHour, Exact.Of(10, 36), "km/h", "km/h", static _ => 2, "km/h", "kmh", "kph", "kmph", "km/hr"),
        new(SpeedUnit.MilePerHour, Exact.Of(44704, 100000), "mph", "mph", static _ => 2, "mph", "mi/h", "miles per hour"),
        new(SpeedUnit.MetrePerMinute, Exact.Of(1, 60), "m/min", "m/min", static _ => 1, "m/min", "metres per minute", "meters per minute"),
        new(SpeedUnit.FootPerMinute, Exact.Of(3048, 600000), "ft/min", "ft/min", static _ => 1, "ft/min", "fpm"));

    private readonly string? _typed;

    private Speed(Reading<SpeedUnit> reading, string typed)
    {
        MetresPerSecond = reading.Value.ToDouble();
        Unit = reading.Unit;
        _typed = typed;
    }

    /// <summary>m/s, rounded once.</summary>
    public double MetresPerSecond { get; }

    /// <summary>The unit typed, or the default where none was.</summary>
    public SpeedUnit Unit { get; }

    /// <summary>The text as typed.</summary>
    public string Typed => _typed ?? "";

    /// <summary>Reads a speed. Never throws.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="style">The person's way of writing.</param>
    /// <param name="defaultUnit">The unit of a bare number; null when a unit must be typed.</param>
    /// <param name="value">The speed.</param>
    /// <param name="fault">Why not.</param>
    public static bool TryParse(
        string? text, WritingStyle style, SpeedUnit? defaultUnit, out Speed value, [NotNullWhen(false)] out ParseFault? fault)
    {
        ArgumentNullException.ThrowIfNull(style);
        text ??= "";
        bool read = QuantityReader.TryRead(text, style, Units, defaultUnit, out Reading<SpeedUnit> reading, out fault);
        value = read ? new Speed(reading, text) : default;
        return read;
    }

    /// <summary>Reads a speed.</summary>
    /// <exception cref="QuantityFormatException">The text is not a speed.</exception>
    public static Speed Parse(string? text, WritingStyle style, SpeedUnit? defaultUnit = null) =>
        TryParse(text, style, defaultUnit, out Speed value, out ParseFault? fault) ? value : throw new QuantityFormatException(fault);

    /// <summary>Prints in a unit, rounded sensibly, or to exactly so many decimals.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static string Print(double metresPerSecond, SpeedUnit unit, WritingStyle style, int? decimals = null)
    {
        ArgumentNullException.ThrowIfNull(style);
        return QuantityPrinter.Print(metresPerSecond, Units[unit], style, decimals);
    }

    /// <summary>Prints in a unit with as many digits as read back to the same double, bit for bit.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static string PrintRoundTrip(double metresPerSecond, SpeedUnit unit, WritingStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        return QuantityPrinter.RoundTrip(metresPerSecond, Units[unit], style);
    }
}
