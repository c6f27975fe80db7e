namespace Closemown.Turf;

/// <summary>When the person can mow, and what matches forbid.</summary>
public static class PersonDays
{
    /// <summary>Probability of being free by day: usual days, other days; none where the minutes do not suffice.</summary>
    /// <param name="wish">What the person wants; no days told means that any day is usual.</param>
    /// <param name="first">The first day.</param>
    /// <param name="days">Days.</param>
    /// <param name="minutes">Minutes a mowing takes; null where not known.</param>
    public static double[] Free(TurfWish wish, DateOnly first, int days, double? minutes)
    {
        ArgumentNullException.ThrowIfNull(wish);
        if (minutes > wish.MinutesADay) return new double[days];
        return [.. Enumerable.Range(0, days).Select(d => wish.Weekdays.Count == 0 || wish.Weekdays.Contains(first.AddDays(d).DayOfWeek) ? PlanRules.UsualDay : PlanRules.OtherDay)];
    }

    /// <summary>Days of matches.</summary>
    public static bool[] Fixtures(TurfWish wish, DateOnly first, int days)
    {
        ArgumentNullException.ThrowIfNull(wish);
        return [.. Enumerable.Range(0, days).Select(d => wish.Fixtures.Contains(first.AddDays(d)))];
    }

    /// <summary>Days without a change of height: the match and the days before it.</summary>
    public static bool[] NoChange(TurfWish wish, DateOnly first, int days)
    {
        ArgumentNullException.ThrowIfNull(wish);
        return [.. Enumerable.Range(0, days).Select(d => wish.Fixtures.Any(f => f.DayNumber - first.AddDays(d).DayNumber is var left && left >= 0 && left <= wish.NoHeightChangeDays))];
    }
}
