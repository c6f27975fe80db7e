using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>An entry of the kind <c>measure</c>: steel measured.</summary>
public static class MeasureEntry
{
    public const string Name = "measure";

    /// <summary>What was measured.</summary>
    public static Field<string> What { get; } = Word("what", "what was measured", "reel", "knife-lip", "land", "roller-front", "roller-rear", "straightedge").Must();

    /// <summary>What was measured at the left, mm; of a straightedge the hollow of the bedknife, + is hollow.</summary>
    public static Field<double> Left { get; } = Number(Stations.Left, -10, 600, "what was measured at the left, mm; of a straightedge the hollow of the bedknife, + is hollow");

    /// <summary>What was measured in the centre, mm; of a straightedge the hollow of the bedknife, + is hollow.</summary>
    public static Field<double> Centre { get; } = Number(Stations.Centre, -10, 600, "what was measured in the centre, mm; of a straightedge the hollow of the bedknife, + is hollow");

    /// <summary>What was measured at the right, mm; of a straightedge the hollow of the bedknife, + is hollow.</summary>
    public static Field<double> Right { get; } = Number(Stations.Right, -10, 600, "what was measured at the right, mm; of a straightedge the hollow of the bedknife, + is hollow");

    /// <summary>What with.</summary>
    public static Field<string> How { get; } = Word("how", "what with", "caliper", "tape", "micrometer", "eye").OnlyKept();

    /// <summary>How far off that may be, mm.</summary>
    public static Field<double> SdMm { get; } = Number("sdMm", 0.0001, 20, "how far off that may be, mm").OnlyKept();

    public static KindSpec Kind { get; } = new(Name, Belongs.Unit, Nature.Reading, "steel measured",
        What, Left, Centre, Right, How, SdMm, CheckFields.Blade)
    {
        OneOf = [[Stations.Left, Stations.Centre, Stations.Right]],
        Example = """{"kind":"measure","what":"straightedge","centre":0.03}""",
    };
}
