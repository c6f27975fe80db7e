using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>An entry of the kind <c>paper-drag</c>: strip laid flat between blade and bedknife, pulled.</summary>
public static class PaperDragEntry
{
    public const string Name = "paper-drag";

    /// <summary>What was found at the left.</summary>
    public static Field<string> Left { get; } = Word(Stations.Left, "what was found at the left", "tight", "slight", "loose");

    /// <summary>What was found in the centre.</summary>
    public static Field<string> Centre { get; } = Word(Stations.Centre, "what was found in the centre", "tight", "slight", "loose");

    /// <summary>What was found at the right.</summary>
    public static Field<string> Right { get; } = Word(Stations.Right, "what was found at the right", "tight", "slight", "loose");

    /// <summary>Thickness of the strip, µm.</summary>
    public static Field<double> StripUm { get; } = Number("stripUm", 1, 2000, "thickness of the strip, µm");

    public static KindSpec Kind { get; } = new(Name, Belongs.Unit, Nature.Reading, "strip laid flat between blade and bedknife, pulled",
        Left, Centre, Right, StripUm, CheckFields.Blade, CheckFields.State)
    {
        OneOf = [[Stations.Left, Stations.Centre, Stations.Right]],
        Example = """{"kind":"paper-drag","left":"slight","right":"loose"}""",
    };
}
