namespace Closemown.Turf;

/// <summary>When the person can mow. Assumptions, no source.</summary>
public static class PersonDays
{
    /// <summary>Probability of being there on a usual day, and on another.</summary>
    public const double UsualDay = 0.85, OtherDay = 0.07;

    /// <summary>Probability of each day that days away begin which nobody has told of yet: some four times a year.</summary>
    public const double AwayBegins = 1 / 90.0;

    /// <summary>The fewest and the most of such days.</summary>
    public const int AwayLeast = 5, AwayMost = 11;

    /// <summary>Probability of being free by day; no usual days told means that any day is one.</summary>
    /// <param name="wish">What the person wants.</param>
    /// <param name="first">The first day.</param>
    /// <param name="days">Days.</param>
    public static double[] Free(TurfWish wish, DateOnly first, int days)
    {
        ArgumentNullException.ThrowIfNull(wish);
        return [.. Enumerable.Range(0, days).Select(d => wish.Weekdays.Count == 0 || wish.Weekdays.Contains(first.AddDays(d).DayOfWeek) ? UsualDay : OtherDay)];
    }
}
