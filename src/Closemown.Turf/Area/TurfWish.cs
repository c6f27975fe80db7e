using System.Globalization;
using Closemown.Entries;

namespace Closemown.Turf;

/// <summary>What the person wants of an area.</summary>
public sealed record TurfWish
{
    /// <summary>Days before a match without a change of height, where none are told (common practice, no source).</summary>
    public const int UsualNoHeightChangeDays = 3;

    /// <summary>Height wanted, mm, or null.</summary>
    public double? CutMm { get; init; }

    /// <summary>By when, or null.</summary>
    public DateOnly? ByDate { get; init; }

    /// <summary>Usual days; empty where none are told: any day.</summary>
    public IReadOnlyList<DayOfWeek> Weekdays { get; init; } = [];

    /// <summary>Minutes a day, or null for no limit told.</summary>
    public double? MinutesADay { get; init; }

    /// <summary>Days of matches, in order.</summary>
    public IReadOnlyList<DateOnly> Fixtures { get; init; } = [];

    /// <summary>Days before a match without a change of height.</summary>
    public int NoHeightChangeDays { get; init; } = UsualNoHeightChangeDays;

    /// <summary>This wish as a later <c>wish</c> entry changes it: only what it names; a new height without a date has none.</summary>
    public TurfWish After(Entry e)
    {
        ArgumentNullException.ThrowIfNull(e);
        var cut = e[WishEntry.CutMm];
        return this with
        {
            CutMm = cut ?? CutMm,
            ByDate = Date(e[WishEntry.ByDate]) ?? (cut is null ? ByDate : null),
            Weekdays = e[WishEntry.Weekdays] is { } days ? [.. days.Select(Day).Distinct().Order()] : Weekdays,
            MinutesADay = e[WishEntry.MinutesADay] ?? MinutesADay,
            Fixtures = e[WishEntry.Fixtures] is { } dates ? [.. dates.Select(Date).OfType<DateOnly>().Distinct().Order()] : Fixtures,
            NoHeightChangeDays = (int?)e[WishEntry.NoHeightChangeDays] ?? NoHeightChangeDays,
        };
    }

    private static DayOfWeek Day(string name) => name switch
    {
        "mon" => DayOfWeek.Monday,
        "tue" => DayOfWeek.Tuesday,
        "wed" => DayOfWeek.Wednesday,
        "thu" => DayOfWeek.Thursday,
        "fri" => DayOfWeek.Friday,
        "sat" => DayOfWeek.Saturday,
        _ => DayOfWeek.Sunday,
    };

    private static DateOnly? Date(string? text) => DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var d) ? d : null;
}
