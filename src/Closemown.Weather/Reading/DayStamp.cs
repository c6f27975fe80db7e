using System.Globalization;

namespace Closemown.Weather;

/// <summary>The day of a row, and the time of day beside it where one is written.</summary>
/// <param name="Date">The day.</param>
/// <param name="Time">The time of day; null where only a day is written.</param>
internal readonly record struct DayStamp(DateOnly Date, TimeOnly? Time)
{
    private static readonly string[] Clear = ["yyyy-M-d", "yyyyMMdd"];
    private static readonly string[] Times = ["H:mm", "H:mm:ss", "H:mm:ss.FFFFFFF", "h:mm tt", "h:mm:ss tt", "HHmm", "HHmmss", "%H"];

    /// <summary>Reads a cell; null where it holds no day.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="order">Order of dates with slashes: <c>ymd</c>, <c>dmy</c>, <c>mdy</c>, or null.</param>
    /// <exception cref="WeatherException">The day may come first or the month, and nobody said which.</exception>
    public static DayStamp? Of(string cell, string? order)
    {
        var text = cell.Trim();
        // One run of digits: a day, or a day with its hour and minute.
        if (text.Length is 10 or 12 or 14 && text.All(char.IsAsciiDigit)) text = $"{text[..8]} {text[8..]}";
        var parted = text.IndexOfAny(['T', ' ']);
        var (day, rest) = parted < 0 ? (text, "") : (text[..parted], text[(parted + 1)..]);
        if (Day(day, order) is { } date) return rest.Length == 0 ? new(date, null) : Clock(rest) is { } time ? new(date, time) : null;
        if (order is null && day.Contains('/', StringComparison.Ordinal) && day.All(c => c == '/' || char.IsAsciiDigit(c)))
            throw new WeatherException($"\"{cell}\" may be day first or month first.", "Add --dates dmy (day first) or --dates mdy (month first).");
        return null;
    }

    /// <summary>Reads a time of day, an offset behind it passed over; null where there is none.</summary>
    public static TimeOnly? Clock(string cell)
    {
        var text = cell.Trim();
        var offset = text.IndexOfAny(['+', '-', 'Z', 'z']);
        if (offset > 0) text = text[..offset].TrimEnd();
        if (text.StartsWith("24:00", StringComparison.Ordinal)) return TimeOnly.MinValue;
        return TimeOnly.TryParseExact(text, Times, CultureInfo.InvariantCulture, DateTimeStyles.None, out var time) ? time : null;
    }

    /// <summary>Whether a weather station can have written it: a day too early or too late is a slip, and has no day before or after it to put a reading on.</summary>
    public static bool Sensible(DateOnly date) => date.Year is >= 1600 and <= 2999;

    private static DateOnly? Day(string text, string? order)
    {
        string[] forms = order switch
        {
            "dmy" => ["d/M/yyyy", "d.M.yyyy", "d-M-yyyy"],
            "mdy" => ["M/d/yyyy", "M-d-yyyy"],
            _ => ["yyyy/M/d", "d.M.yyyy"],
        };
        return (DateOnly.TryParseExact(text, forms, CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) || DateOnly.TryParseExact(text, Clear, CultureInfo.InvariantCulture, DateTimeStyles.None, out date))
            && Sensible(date) ? date : null;
    }
}
