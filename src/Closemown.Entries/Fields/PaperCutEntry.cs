using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>An entry of the kind <c>paper-cut</c>: strip fed straight in, square to the bedknife.</summary>
public static class PaperCutEntry
{
    public const string Name = "paper-cut";

    /// <summary>What was found at the left.</summary>
    public static Field<string> Left { get; } = Word(Stations.Left, "what was found at the left", "cuts", "nicks", "folds");

    /// <summary>What was found in the centre.</summary>
    public static Field<string> Centre { get; } = Word(Stations.Centre, "what was found in the centre", "cuts", "nicks", "folds");

    /// <summary>What was found at the right.</summary>
    public static Field<string> Right { get; } = Word(Stations.Right, "what was found at the right", "cuts", "nicks", "folds");

    /// <summary>Thickness of the strip, µm.</summary>
    public static Field<double> StripUm { get; } = Number("stripUm", 1, 2000, "thickness of the strip, µm");

    /// <summary>Layers fed in together.</summary>
    public static Field<double> Layers { get; } = Whole("layers", 1, 20, "layers fed in together");

    /// <summary>The strip was damp.</summary>
    public static Field<bool> Damp { get; } = Flag("damp", "the strip was damp");

    public static KindSpec Kind { get; } = new(Name, Belongs.Unit, Nature.Reading, "strip fed straight in, square to the bedknife",
        Left, Centre, Right, StripUm, Layers, Damp, CheckFields.Blade, CheckFields.State)
    {
        OneOf = [[Stations.Left, Stations.Centre, Stations.Right]],
        Example = """{"kind":"paper-cut","left":"cuts","centre":"cuts","right":"folds"}""",
    };
}
