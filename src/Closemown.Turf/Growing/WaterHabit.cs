using Closemown.Entries;

namespace Closemown.Turf;

/// <summary>How a person waters, as the last weeks of the record show: taken to go on so. Common practice, no source.</summary>
/// <param name="EveryDays">Days from one watering to the next, 1 or more.</param>
/// <param name="Mm">Of each, mm.</param>
/// <param name="Last">The last day watered.</param>
public sealed record WaterHabit(double EveryDays, double Mm, DateOnly Last)
{
    private const int Weeks = 3, Least = 3;

    /// <summary>Reads it off the waterings.</summary>
    /// <param name="area">The area.</param>
    /// <param name="entries">Its entries up to then.</param>
    /// <param name="today">The day it is asked for.</param>
    /// <returns>Null where fewer than three waterings in three weeks show none, or the last is two usual gaps past.</returns>
    public static WaterHabit? Of(TurfArea area, IEnumerable<Entry> entries, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(area);
        ArgumentNullException.ThrowIfNull(entries);
        List<(DateOnly Day, double Mm)> given = [.. entries.Where(e => e.Is(WaterEntry.Kind) && e[WaterEntry.Mm] is > 0).Select(e => (area.LocalDate(e.At), e[WaterEntry.Mm]!.Value))
            .Where(w => w.Item1 <= today && today.DayNumber - w.Item1.DayNumber < 7 * Weeks)];
        if (given.Count < Least) return null;
        var (first, last) = (given.Min(w => w.Day), given.Max(w => w.Day));
        var every = Math.Max(1, (last.DayNumber - first.DayNumber) / (given.Count - 1.0));
        return today.DayNumber - last.DayNumber > 2 * every + 1 ? null : new(every, given.Average(w => w.Mm), last);
    }

    /// <summary>Whether it is watered again on a day, so many days after the last watering; rain of the day and the one before in its place.</summary>
    internal bool Due(int daysSince, double rainMm) => daysSince >= Math.Round(EveryDays) && rainMm < Mm / 2;
}
