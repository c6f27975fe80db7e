using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>An entry of the kind <c>square-up</c>: both ends brought to the same slight drag.</summary>
public static class SquareUpEntry
{
    public const string Name = "square-up";

    /// <summary>Thickness of the strip, µm.</summary>
    public static Field<double> StripUm { get; } = Number("stripUm", 1, 2000, "thickness of the strip, µm");

    public static KindSpec Kind { get; } = new(Name, Belongs.Unit, Nature.Action, "both ends brought to the same slight drag",
        StripUm)
    {
        Example = """{"kind":"square-up","stripUm":80}""",
    };
}
