using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>An entry of the kind <c>wish</c>: what the person wants.</summary>
public static class WishEntry
{
    public const string Name = "wish";

    /// <summary>Height wanted, mm.</summary>
    public static Field<double> CutMm { get; } = Number("cutMm", 0, 200, "height wanted, mm");

    /// <summary>By when.</summary>
    public static Field<string> ByDate { get; } = Date("byDate", "by when");

    /// <summary>Usual days.</summary>
    public static Field<IReadOnlyList<string>> Weekdays { get; } = Words("weekdays", "usual days", "mon", "tue", "wed", "thu", "fri", "sat", "sun");

    /// <summary>Minutes a day.</summary>
    public static Field<double> MinutesADay { get; } = Number("minutesADay", 0, 1440, "minutes a day");

    /// <summary>Dates of matches.</summary>
    public static Field<IReadOnlyList<string>> Fixtures { get; } = Dates("fixtures", "dates of matches");

    /// <summary>Days before a match without a change of height.</summary>
    public static Field<double> NoHeightChangeDays { get; } = Whole("noHeightChangeDays", 0, 60, "days before a match without a change of height");

    public static KindSpec Kind { get; } = new(Name, Belongs.Area, Nature.Description, "what the person wants",
        CutMm, ByDate, Weekdays, MinutesADay, Fixtures, NoHeightChangeDays)
    {
        Example = """{"kind":"wish","area":"green","cutMm":5,"weekdays":["tue","fri"]}""",
    };
}
