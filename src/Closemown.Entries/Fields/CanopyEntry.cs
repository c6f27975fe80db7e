using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>An entry of the kind <c>canopy</c>: standing height.</summary>
public static class CanopyEntry
{
    public const string Name = "canopy";

    /// <summary>Height, mm; a list gives one a spot.</summary>
    public static Field<IReadOnlyList<double>> Mm { get; } = NumberOrNumbers("mm", 0, 1000, "height, mm; a list gives one a spot");

    /// <summary>At least, mm.</summary>
    public static Field<double> LowMm { get; } = Number("lowMm", 0, 1000, "at least, mm");

    /// <summary>At most, mm.</summary>
    public static Field<double> HighMm { get; } = Number("highMm", 0, 1000, "at most, mm");

    /// <summary>Before or after mowing.</summary>
    public static Field<string> When { get; } = Word("when", "before or after mowing", "before", "after").Must();

    /// <summary>Read by.</summary>
    public static Field<string> How { get; } = Word("how", "read by", "prism", "ruler", "card", "photo");

    /// <summary>Smallest step of the reading, mm.</summary>
    public static Field<double> StepMm { get; } = Number("stepMm", 0.01, 20, "smallest step of the reading, mm");

    public static KindSpec Kind { get; } = new(Name, Belongs.Area, Nature.Reading, "standing height",
        Mm, LowMm, HighMm, When, How, StepMm)
    {
        OneOf = [[Mm.Name, LowMm.Name, HighMm.Name]],
        Example = """{"kind":"canopy","area":"green","mm":[5.1,5.3],"when":"before"}""",
    };
}
