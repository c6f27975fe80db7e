using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>An entry of the kind <c>mow</c>: mown.</summary>
public static class MowEntry
{
    public const string Name = "mow";

    /// <summary>Hours of mowing.</summary>
    public static Field<double> Hours { get; } = Number("hours", 0.001, 48, "hours of mowing");

    /// <summary>Turf mown, m².</summary>
    public static Field<double> AreaM2 { get; } = Number("areaM2", 0.1, 1e6, "turf mown, m²");

    /// <summary>Times over.</summary>
    public static Field<double> Passes { get; } = Number("passes", 0.1, 50, "times over");

    /// <summary>Bench height, mm.</summary>
    public static Field<double> BenchMm { get; } = Number("benchMm", 0, 200, "bench height, mm");

    /// <summary>Height cut, mm.</summary>
    public static Field<double> CutMm { get; } = Number("cutMm", 0, 200, "height cut, mm");

    public static KindSpec Kind { get; } = new(Name, Belongs.UnitAndArea, Nature.Action, "mown",
        Hours, AreaM2, Passes, BenchMm, CutMm)
    {
        OneOf = [[Hours.Name, AreaM2.Name]],
        Example = """{"kind":"mow","hours":1.0}""",
    };
}
