using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>An entry of the kind <c>clippings</c>: box emptied.</summary>
public static class ClippingsEntry
{
    public const string Name = "clippings";

    /// <summary>Litres.</summary>
    public static Field<double> Litres { get; } = Number("litres", 0, 10000, "litres").Must();

    /// <summary>From this much turf, m².</summary>
    public static Field<double> AreaM2 { get; } = Number("areaM2", 0.1, 1e6, "from this much turf, m²");

    public static KindSpec Kind { get; } = new(Name, Belongs.Area, Nature.Reading, "box emptied",
        Litres, AreaM2)
    {
        Example = """{"kind":"clippings","area":"green","litres":12}""",
    };
}
