using System.Globalization;

namespace Closemown.Weather;

/// <summary>Watches the rows of a table go by and refuses one whose rows are hours: their first values would pass for those of days.</summary>
/// <remarks>A time of day that stays where it is (midnight, or the hour at which somebody reads) is a daily table's; a change of clocks moves it by an hour.</remarks>
internal sealed class DailyOnly
{
    /// <summary>Rows a day, on average, from which a table without times is none of days: a day told twice is a slip.</summary>
    private const int TooMany = 3;

    private static readonly TimeSpan MayMove = TimeSpan.FromHours(3);
    private static readonly TimeOnly MorningFrom = new(5, 0), MorningTo = new(11, 0);
    private readonly Dictionary<DateOnly, TimeOnly?> seen = [];
    private (TimeOnly Earliest, TimeOnly Latest)? span;
    private long rows;

    /// <summary>What to ask for in place of hours.</summary>
    public const string AskForDays = "Export daily values instead: one row a day with its least and greatest temperature and its rain.";

    /// <summary>A row goes by.</summary>
    /// <param name="stamp">Its day, and the time of day written with it.</param>
    /// <param name="line">Its line.</param>
    /// <param name="beside">A time of day in a column of its own; it may also be when that day's warmest moment was, so it only counts where a day comes again.</param>
    /// <exception cref="WeatherException">The rows are hours.</exception>
    public void See(DayStamp stamp, long line, TimeOnly? beside = null)
    {
        rows++;
        var time = stamp.Time ?? beside;
        if (!seen.TryAdd(stamp.Date, time))
        {
            if (seen[stamp.Date] is { } before && time is { } now && before != now)
                throw new WeatherException($"The rows are hourly, not daily: {Day(stamp.Date)} comes at {Clock(before)} and, in line {Number(line)}, at {Clock(now)}.", AskForDays);
        }
        if (stamp.Time is not { } t) return;
        span = span is { } s ? (t < s.Earliest ? t : s.Earliest, t > s.Latest ? t : s.Latest) : (t, t);
        if (span.Value.Latest - span.Value.Earliest > MayMove)
            throw new WeatherException($"The rows are readings of changing hours ({Clock(span.Value.Earliest)} to {Clock(span.Value.Latest)}, as in line {Number(line)}), not days.", AskForDays);
    }

    /// <summary>All rows have gone by: says what their constant hour means, if they have one.</summary>
    /// <exception cref="WeatherException">Most days came several times.</exception>
    public void Close(WeatherTable table)
    {
        if ((seen.Count > 0 && rows >= TooMany * (long)seen.Count) || table.Clashes * 2 > table.Count)
            throw new WeatherException($"The rows are not daily: {Number(rows)} rows are of {Number(seen.Count)} day{(seen.Count == 1 ? "" : "s")}.", AskForDays);
        if (span is not { Earliest: var hour } || hour == TimeOnly.MinValue) return;
        table.Notes.Add($"Every row is of {Clock(hour)}: its date is taken as it stands.");
        if (hour >= MorningFrom && hour <= MorningTo) table.Notes.Add(WeatherTable.MorningNote);
    }

    private static string Day(DateOnly d) => d.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Clock(TimeOnly t) => t.ToString("HH:mm", CultureInfo.InvariantCulture);

    private static string Number(long n) => n.ToString(CultureInfo.InvariantCulture);
}
