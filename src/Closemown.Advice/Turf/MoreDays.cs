using Closemown.Turf;

namespace Closemown.Advice;

/// <summary>Two more days a week with which a wished date would be met, or the height reached weeks earlier.</summary>
/// <param name="Days">The two days.</param>
/// <param name="All">The usual days with them.</param>
/// <param name="Reached">When it would be reached.</param>
public sealed record MoreDays(IReadOnlyList<DayOfWeek> Days, IReadOnlyList<DayOfWeek> All, DateOnly Reached)
{
    private const int Week = 7, More = 2, Weeks = 21;

    /// <summary>Tries them.</summary>
    /// <param name="today">The area.</param>
    /// <param name="without">When it is reached without them; null where that is past a year.</param>
    /// <param name="plan">Makes the plan of another wish.</param>
    /// <returns>Null where the days are not told, hardly any is left, or the date is not met with them either.</returns>
    internal static MoreDays? Of(AreaToday today, DateOnly? without, Func<TurfWish, MowingPlan> plan)
    {
        var wish = today.Ledger.Wish;
        if (wish.Weekdays.Count is 0 or > Week - More || wish.ByDate is not { } by || by < today.Date) return null;
        List<DayOfWeek> all = [.. wish.Weekdays];
        List<DayOfWeek> more = [];
        for (var n = 0; n < More; n++)
        {
            // The day farthest from those there are.
            var next = Enum.GetValues<DayOfWeek>().Where(d => !all.Contains(d)).MaxBy(d => all.Min(a => Apart(a, d)));
            all.Add(next);
            more.Add(next);
        }
        all.Sort((a, b) => Since(a).CompareTo(Since(b)));
        var with = plan(wish with { Weekdays = [.. all.Order()] }).Wish;
        // Met, or weeks earlier.
        return with.Earliest is { } on && (with.CanMeetDate == true || !with.Extrapolated && (without is not { } late || on.DayNumber <= late.DayNumber - Weeks)) ? new(more, all, on) : null;
    }

    private static int Apart(DayOfWeek a, DayOfWeek b) => Math.Min(Math.Abs((int)a - (int)b), Week - Math.Abs((int)a - (int)b));

    /// <summary>Days since Monday.</summary>
    private static int Since(DayOfWeek day) => ((int)day + Week - 1) % Week;
}
