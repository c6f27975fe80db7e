using System.Diagnostics.CodeAnalysis;

namespace Closemown.Quantities;

/// <summary>Units of temperature.</summary>
public enum TemperatureUnit
{
    /// <summary>Degrees Celsius.</summary>
    Celsius,

    /// <summary>Degrees Fahrenheit: (F − 32) · 5/9 °C.</summary>
    Fahrenheit,
}

/// <summary>A temperature as typed: <c>20 °C</c>, <c>68F</c>.</summary>
public readonly record struct Temperature
{
    internal static readonly UnitTable<TemperatureUnit> Units = new(
        "temperature",
        "20 °C or 68 °F",
        new(TemperatureUnit.Celsius, Exact.Of(1, 1), "°C", "°C", static _ => 1, "°C", "C", "deg C", "degC", "celsius", "° C"),
        new(TemperatureUnit.Fahrenheit, Exact.Of(5, 9), "°F", "°F", static _ => 1,
            "°F", "F", "deg F", "degF", "fahrenheit", "° F")
        {
            Offset = Exact.Of(-160, 9),
        })
    {
        Signed = true,
    };

    private readonly string? _typed;

    private Temperature(Reading<TemperatureUnit> reading, string typed)
    {
        Celsius = reading.Value.ToDouble();
        Unit = reading.Unit;
        _typed = typed;
    }

    /// <summary>°C, rounded once.</summary>
    public double Celsius { get; }

    /// <summary>The unit typed, or the default where none was.</summary>
    public TemperatureUnit Unit { get; }

    /// <summary>The text as typed.</summary>
    public string Typed => _typed ?? "";

    /// <summary>Reads a temperature. Never throws.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="style">The person's way of writing.</param>
    /// <param name="defaultUnit">The unit of a bare number; null when a unit must be typed.</param>
    /// <param name="value">The temperature.</param>
    /// <param name="fault">Why not.</param>
    public static bool TryParse(
        string? text, WritingStyle style, TemperatureUnit? defaultUnit, out Temperature value, [NotNullWhen(false)] out ParseFault? fault)
    {
        ArgumentNullException.ThrowIfNull(style);
        text ??= "";
        bool read = QuantityReader.TryRead(text, style, Units, defaultUnit, out Reading<TemperatureUnit> reading, out fault);
        value = read ? new Temperature(reading, text) : default;
        return read;
    }

    /// <summary>Reads a temperature.</summary>
    /// <exception cref="QuantityFormatException">The text is not a temperature.</exception>
    public static Temperature Parse(string? text, WritingStyle style, TemperatureUnit? defaultUnit = null) =>
        TryParse(text, style, defaultUnit, out Temperature value, out ParseFault? fault) ? value : throw new QuantityFormatException(fault);

    /// <summary>Prints in a unit, rounded sensibly, or to exactly so many decimals.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static string Print(double celsius, TemperatureUnit unit, WritingStyle style, int? decimals = null)
    {
        ArgumentNullException.ThrowIfNull(style);
        return QuantityPrinter.Print(celsius, Units[unit], style, decimals);
    }

    /// <summary>Prints in a unit with as many digits as read back to the same double, bit for bit.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static string PrintRoundTrip(double celsius, TemperatureUnit unit, WritingStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        return QuantityPrinter.RoundTrip(celsius, Units[unit], style);
    }
}
