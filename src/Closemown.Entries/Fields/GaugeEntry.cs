using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>An entry of the kind <c>gauge</c>: bench height read.</summary>
public static class GaugeEntry
{
    public const string Name = "gauge";

    /// <summary>Bench height at the left, mm.</summary>
    public static Field<double> LeftMm { get; } = Number("leftMm", 0, 200, "bench height at the left, mm");

    /// <summary>Bench height at the right, mm.</summary>
    public static Field<double> RightMm { get; } = Number("rightMm", 0, 200, "bench height at the right, mm");

    /// <summary>Read with the height nuts tight.</summary>
    public static Field<bool> Locked { get; } = Flag("locked", "read with the height nuts tight");

    /// <summary>Name of a gauge study.</summary>
    public static Field<string> Study { get; } = Text("study", "name of a gauge study");

    /// <summary>Setting of that study.</summary>
    public static Field<string> Setting { get; } = Text("setting", "setting of that study");

    /// <summary>Trial of that study.</summary>
    public static Field<double> Trial { get; } = Whole("trial", 1, 1000, "trial of that study").OnlyKept();

    public static KindSpec Kind { get; } = new(Name, Belongs.Unit, Nature.Reading, "bench height read",
        LeftMm, RightMm, Locked, Study, Setting, Trial)
    {
        OneOf = [[LeftMm.Name, RightMm.Name]],
        Example = """{"kind":"gauge","leftMm":5.0,"rightMm":5.1,"locked":true}""",
    };
}
