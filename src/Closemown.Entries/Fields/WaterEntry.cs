using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>An entry of the kind <c>water</c>: watered.</summary>
public static class WaterEntry
{
    public const string Name = "water";

    /// <summary>Mm of water.</summary>
    public static Field<double> Mm { get; } = Number("mm", 0, 500, "mm of water").Must();

    /// <summary>Caught in cans set out alike, four or more, mm: how evenly it falls.</summary>
    public static Field<IReadOnlyList<double>> CansMm { get; } = Numbers("cansMm", 0, 0, 500, "caught in cans set out alike, four or more, mm: how evenly it falls");

    public static KindSpec Kind { get; } = new(Name, Belongs.Area, Nature.Action, "watered",
        Mm, CansMm)
    {
        Example = """{"kind":"water","area":"green","mm":5}""",
    };
}
