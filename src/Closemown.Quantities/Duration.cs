using System.Diagnostics.CodeAnalysis;

namespace Closemown.Quantities;

/// <summary>Units of duration.</summary>
public enum DurationUnit
{
    /// <summary>Hours.</summary>
    Hour,

    /// <summary>Minutes.</summary>
    Minute,

    /// <summary>Seconds.</summary>
    Second,

    /// <summary>Days of 24 hours.</summary>
    Day,

    /// <summary>Weeks of 7 days.</summary>
    Week,
}

/// <summary>A duration as typed: <c>2 min</c>, <c>90 s</c>, <c>1.5 h</c>, <c>1 h 20 min</c>, <c>1:30</c> (hours and minutes); not below
/// zero.</summary>
public readonly record struct Duration
{
    internal static readonly UnitTable<DurationUnit> Units = new(
        "duration",
        "20 min, 1 h 20 min or 1:30",
        new(DurationUnit.Hour, Exact.Of(1, 1), "h", "h", static x => x < 1 ? 3 : 2, "h", "hr", "hrs", "hour", "hours"),
        new(DurationUnit.Minute, Exact.Of(1, 60), "min", "min", static _ => 1, "min", "mins", "minute", "minutes"),
        new(DurationUnit.Second, Exact.Of(1, 3600), "s", "s", static _ => 0, "s", "sec", "secs", "second", "seconds"),
        new(DurationUnit.Day, Exact.Of(24, 1), "day", "days", static _ => 1, "d", "day", "days"),
        new(DurationUnit.Week, Exact.Of(168, 1), "week", "weeks", static _ => 1, "week", "weeks", "wk", "wks"));

    private readonly string? _typed;

    private Duration(Exact hours, DurationUnit unit, string typed)
    {
        Hours = hours.ToDouble();
        Minutes = (hours * Exact.Of(60, 1)).ToDouble();
        Seconds = (hours * Exact.Of(3600, 1)).ToDouble();
        Unit = unit;
        _typed = typed;
    }

    /// <summary>The duration in hours, rounded once.</summary>
    public double Hours { get; }

    /// <summary>The duration in minutes, rounded once.</summary>
    public double Minutes { get; }

    /// <summary>The duration in seconds, rounded once.</summary>
    public double Seconds { get; }

    /// <summary>The first unit typed, or the default where none was; hours for <c>1:30</c>.</summary>
    public DurationUnit Unit { get; }

    /// <summary>The text as typed.</summary>
    public string Typed => _typed ?? "";

    /// <summary>Reads a duration. Never throws.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="style">The person's way of writing.</param>
    /// <param name="defaultUnit">The unit of a bare number; null when a unit must be typed.</param>
    /// <param name="value">The duration.</param>
    /// <param name="fault">Why not.</param>
    public static bool TryParse(
        string? text, WritingStyle style, DurationUnit? defaultUnit, out Duration value, [NotNullWhen(false)] out ParseFault? fault)
    {
        ArgumentNullException.ThrowIfNull(style);
        text ??= "";
        value = default;
        if (!DurationReader.TryRead(text, style, defaultUnit, out Reading<DurationUnit> reading, out fault))
            return false;
        value = new Duration(reading.Value, reading.Unit, text);
        return true;
    }

    /// <summary>Reads a duration.</summary>
    /// <exception cref="QuantityFormatException">The text is not a duration.</exception>
    public static Duration Parse(string? text, WritingStyle style, DurationUnit? defaultUnit = null) =>
        TryParse(text, style, defaultUnit, out Duration value, out ParseFault? fault) ? value : throw new QuantityFormatException(fault);

    /// <summary>Prints in one unit, rounded sensibly, or to exactly so many decimals.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static string Print(double hours, DurationUnit unit, WritingStyle style, int? decimals = null)
    {
        ArgumentNullException.ThrowIfNull(style);
        return QuantityPrinter.Print(hours, Units[unit], style, decimals);
    }

    /// <summary>Prints in one unit with as many digits as read back to the same double, bit for bit.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static string PrintRoundTrip(double hours, DurationUnit unit, WritingStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        return QuantityPrinter.RoundTrip(hours, Units[unit], style);
    }

    /// <summary>Prints for people in whole seconds, minutes, or hours and minutes: <c>45 s</c>, <c>1 min 30 s</c>, <c>20 min</c>, <c>1 h
    /// 20 min</c>.</summary>
    /// <param name="hours">Hours, 0 to 1,000,000.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static string PrintClock(double hours)
    {
        long seconds = (long)Math.Round(Checked(hours) * 3600);
        if (seconds < 60)
            return $"{seconds} s";
        if (seconds < 600)
            return seconds % 60 == 0 ? $"{seconds / 60} min" : $"{seconds / 60} min {seconds % 60} s";
        long minutes = (seconds + 30) / 60;
        if (minutes < 60)
            return $"{minutes} min";
        return minutes % 60 == 0 ? $"{minutes / 60} h" : $"{minutes / 60} h {minutes % 60} min";
    }

    /// <summary>Prints roughly: <c>about 20 minutes</c>, <c>about 3 hours</c>, <c>about 5 days</c>, <c>about 3 weeks</c>, <c>about 4
    /// months</c>, <c>about 2 years</c>.</summary>
    /// <param name="hours">Hours, 0 to 1,000,000.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static string PrintAbout(double hours)
    {
        double days = Checked(hours) / 24;
        (double count, string word) = days switch
        {
            < 1.0 / 1440 => (0, ""),
            < 1.0 / 24 => (days * 1440 >= 15 ? 5 * Math.Round(days * 288) : days * 1440, "minute"),
            < 1.5 => (hours, "hour"),
            < 12 => (days, "day"),
            < 75 => (days / 7, "week"),
            < 600 => (days / 30.44, "month"),
            _ => (days / 365.25, "year"),
        };
        long whole = (long)Math.Round(count, MidpointRounding.AwayFromZero);
        return whole == 0 ? "less than a minute" : whole == 1 ? $"about 1 {word}" : $"about {whole} {word}s";
    }

    private static double Checked(double hours) => hours is >= 0 and <= 1e6
        ? hours
        : throw new ArgumentOutOfRangeException(nameof(hours), hours, "A duration lies between 0 and 1000000 hours.");
}
