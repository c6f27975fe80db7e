using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>An entry of the kind <c>screw</c>: height screws turned, + raises.</summary>
public static class ScrewEntry
{
    public const string Name = "screw";

    /// <summary>Turns of the left screw.</summary>
    public static Field<double> LeftTurns { get; } = Number("leftTurns", -60, 60, "turns of the left screw");

    /// <summary>Turns of the right screw.</summary>
    public static Field<double> RightTurns { get; } = Number("rightTurns", -60, 60, "turns of the right screw");

    public static KindSpec Kind { get; } = new(Name, Belongs.Unit, Nature.Action, "height screws turned, + raises",
        LeftTurns, RightTurns)
    {
        OneOf = [[LeftTurns.Name, RightTurns.Name]],
        Example = """{"kind":"screw","leftTurns":0.25}""",
    };
}
