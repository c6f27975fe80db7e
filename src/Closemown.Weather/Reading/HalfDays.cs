namespace Closemown.Weather;

/// <summary>Least and greatest temperatures of whole and half days, told by the end of their period, put on civil days.</summary>
/// <remarks>
/// The night that ends in the morning gives the least temperature of that day, the day that ends in the evening the greatest; each of the two may hold the other's extreme, so the greatest of a day is over its evening's row and
/// the next morning's, the least over its morning's row and the evening's before. Where one of the two is missing, the day's value is not known.
/// </remarks>
internal sealed class HalfDays
{
    private const int Night = 1, Day = 2, Whole = Night | Day;
    private static readonly TimeOnly MorningFrom = new(6, 0), MorningTo = new(12, 0), EveningFrom = new(18, 0);
    private readonly SortedDictionary<(DateOnly Date, WeatherField Field), (double Value, int Parts, long Line)> extremes = [];

    /// <summary>Adds a row.</summary>
    /// <param name="date">The day its period ends.</param>
    /// <param name="time">The time it ends.</param>
    /// <param name="hours">How long it is: 12 or 24.</param>
    /// <param name="least">Least temperature, °C; null where not read.</param>
    /// <param name="most">Greatest temperature, °C; null where not read.</param>
    /// <param name="line">Its line.</param>
    /// <returns>False where the period is neither a day nor half a day.</returns>
    public bool Add(DateOnly date, TimeOnly time, int hours, double? least, double? most, long line)
    {
        var morning = time >= MorningFrom && time <= MorningTo;
        int parts;
        DateOnly leastOn, mostOn;
        if (hours == 24) (parts, leastOn, mostOn) = (Whole, morning || time > MorningTo ? date : date.AddDays(-1), time > MorningTo ? date : date.AddDays(-1));
        else if (hours == 12 && morning) (parts, leastOn, mostOn) = (Night, date, date.AddDays(-1));
        else if (hours == 12 && time >= EveningFrom) (parts, leastOn, mostOn) = (Day, date.AddDays(1), date);
        else return false;
        if (least is { } low) Take((leastOn, WeatherField.TMinC), low, parts, line);
        if (most is { } high) Take((mostOn, WeatherField.TMaxC), high, parts, line);
        return true;
    }

    /// <summary>Puts the days that are whole into a table.</summary>
    public void Close(WeatherTable table)
    {
        foreach (var ((date, field), (value, parts, line)) in extremes)
        {
            if (parts == Whole) table.Set(date, field, value, line);
            else table.Drop("half a day without the other half", line);
        }
    }

    private void Take((DateOnly, WeatherField Field) key, double value, int parts, long line)
    {
        if (!extremes.TryGetValue(key, out var known)) extremes[key] = (value, parts, line);
        else extremes[key] = (key.Field == WeatherField.TMinC ? Math.Min(known.Value, value) : Math.Max(known.Value, value), known.Parts | parts, known.Line);
    }
}
