using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>An entry of the kind <c>strip</c>: the paper strip in use.</summary>
public static class StripEntry
{
    public const string Name = "strip";

    /// <summary>Thickness of one layer, µm.</summary>
    public static Field<double> Um { get; } = Number("um", 1, 2000, "thickness of one layer, µm");

    /// <summary>How far off that may be, µm.</summary>
    public static Field<double> SdUm { get; } = Number("sdUm", 0.01, 500, "how far off that may be, µm");

    /// <summary>Grammage, g/m².</summary>
    public static Field<double> Gsm { get; } = Number("gsm", 5, 1000, "grammage, g/m²");

    /// <summary>Thickness of a stack under calipers, mm.</summary>
    public static Field<double> StackMm { get; } = Number("stackMm", 0.01, 100, "thickness of a stack under calipers, mm");

    /// <summary>Layers in that stack.</summary>
    public static Field<double> Layers { get; } = Whole("layers", 1, 500, "layers in that stack");

    /// <summary>A name of the person's own.</summary>
    public static Field<string> NameText { get; } = Text("name", "a name of the person's own").OnlyKept();

    /// <summary>Tried on a known gap: cuts up to this, µm.</summary>
    public static Field<double> CutsToUm { get; } = Number("cutsToUm", 0, 1000, "tried on a known gap: cuts up to this, µm");

    /// <summary>Tried on a known gap: folds from this, µm.</summary>
    public static Field<double> FoldsFromUm { get; } = Number("foldsFromUm", 0, 1000, "tried on a known gap: folds from this, µm");

    public static KindSpec Kind { get; } = new(Name, Belongs.Unit, Nature.Description, "the paper strip in use",
        Um, SdUm, Gsm, StackMm, Layers, NameText, CutsToUm, FoldsFromUm)
    {
        OneOf = [[Um.Name, Gsm.Name, StackMm.Name]],
        Example = """{"kind":"strip","um":80,"sdUm":3}""",
    };
}
