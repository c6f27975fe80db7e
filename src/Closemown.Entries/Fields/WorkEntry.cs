using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>An entry of the kind <c>work</c>: work done to the turf.</summary>
public static class WorkEntry
{
    public const string Name = "work";

    /// <summary>Topdress.</summary>
    public static Field<string> What { get; } = Word("what", "what", "topdress", "brush", "roll", "groom", "verticut", "aerate", "overseed").Must();

    /// <summary>Kg/m².</summary>
    public static Field<double> KgM2 { get; } = Number("kgM2", 0, 100, "kg/m²").OnlyKept();

    /// <summary>Depth, mm.</summary>
    public static Field<double> DepthMm { get; } = Number("depthMm", 0, 500, "depth, mm").OnlyKept();

    public static KindSpec Kind { get; } = new(Name, Belongs.Area, Nature.Action, "work done to the turf",
        What, KgM2, DepthMm)
    {
        Example = """{"kind":"work","area":"green","what":"topdress","kgM2":1}""",
    };
}
