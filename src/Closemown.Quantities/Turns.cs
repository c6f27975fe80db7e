using System.Diagnostics.CodeAnalysis;

namespace Closemown.Quantities;

/// <summary>Units of number of turns.</summary>
public enum TurnsUnit
{
    /// <summary>Whole turns.</summary>
    Turn,

    /// <summary>Degrees, 1/360 turn.</summary>
    Degree,
}

/// <summary>Turns of a screw as typed: <c>1/4 turn</c>, <c>½ turn</c>, <c>-1 1/2 turns</c>, <c>90°</c>.</summary>
public readonly record struct Turns
{
    internal static readonly UnitTable<TurnsUnit> Units = new(
        "number of turns",
        "1/4 turn",
        new(TurnsUnit.Turn, Exact.Of(1, 1), "turn", "turns", static _ => 2, "turn", "turns", "rev", "revs"),
        new(TurnsUnit.Degree, Exact.Of(1, 360), "°", "°", static _ => 0, "°", "deg", "degree", "degrees"))
    {
        Signed = true,
    };

    private readonly string? _typed;

    private Turns(Reading<TurnsUnit> reading, string typed)
    {
        Count = reading.Value.ToDouble();
        Unit = reading.Unit;
        _typed = typed;
    }

    /// <summary>Turns; above zero raises, rounded once.</summary>
    public double Count { get; }

    /// <summary>The unit typed, or the default where none was.</summary>
    public TurnsUnit Unit { get; }

    /// <summary>The text as typed.</summary>
    public string Typed => _typed ?? "";

    /// <summary>Reads a number of turns. Never throws.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="style">The person's way of writing.</param>
    /// <param name="defaultUnit">The unit of a bare number; null when a unit must be typed.</param>
    /// <param name="value">The number of turns.</param>
    /// <param name="fault">Why not.</param>
    public static bool TryParse(
        string? text, WritingStyle style, TurnsUnit? defaultUnit, out Turns value, [NotNullWhen(false)] out ParseFault? fault)
    {
        ArgumentNullException.ThrowIfNull(style);
        text ??= "";
        bool read = QuantityReader.TryRead(text, style, Units, defaultUnit, out Reading<TurnsUnit> reading, out fault);
        value = read ? new Turns(reading, text) : default;
        return read;
    }

    /// <summary>Reads a number of turns.</summary>
    /// <exception cref="QuantityFormatException">The text is not a number of turns.</exception>
    public static Turns Parse(string? text, WritingStyle style, TurnsUnit? defaultUnit = TurnsUnit.Turn) =>
        TryParse(text, style, defaultUnit, out Turns value, out ParseFault? fault) ? value : throw new QuantityFormatException(fault);

    /// <summary>Prints in a unit, rounded sensibly, or to exactly so many decimals.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static string Print(double count, TurnsUnit unit, WritingStyle style, int? decimals = null)
    {
        ArgumentNullException.ThrowIfNull(style);
        return QuantityPrinter.Print(count, Units[unit], style, decimals);
    }

    /// <summary>Prints in a unit with as many digits as read back to the same double, bit for bit.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static string PrintRoundTrip(double count, TurnsUnit unit, WritingStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        return QuantityPrinter.RoundTrip(count, Units[unit], style);
    }
}
