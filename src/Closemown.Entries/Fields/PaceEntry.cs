using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>An entry of the kind <c>pace</c>: ball roll or green speed.</summary>
public static class PaceEntry
{
    public const string Name = "pace";

    /// <summary>Roll uphill, m.</summary>
    public static Field<double> Up { get; } = Number("up", 0, 20, "roll uphill, m").OnlyKept();

    /// <summary>Roll downhill, m.</summary>
    public static Field<double> Down { get; } = Number("down", 0, 20, "roll downhill, m").OnlyKept();

    /// <summary>Green speed, s.</summary>
    public static Field<double> S { get; } = Number("s", 0, 60, "green speed, s").OnlyKept();

    public static KindSpec Kind { get; } = new(Name, Belongs.Area, Nature.Reading, "ball roll or green speed",
        Up, Down, S)
    {
        OneOf = [[Up.Name, Down.Name, S.Name]],
        Example = """{"kind":"pace","area":"green","up":2.4,"down":2.9}""",
    };
}
