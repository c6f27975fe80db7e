using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>An entry of the kind <c>lap</c>: lapped.</summary>
public static class LapEntry
{
    public const string Name = "lap";

    /// <summary>Minutes of lapping.</summary>
    public static Field<double> Minutes { get; } = Number("minutes", 0.01, 600, "minutes of lapping").Must();

    /// <summary>Mesh number of the compound.</summary>
    public static Field<double> Grit { get; } = Number("grit", 10, 3000, "mesh number of the compound");

    public static KindSpec Kind { get; } = new(Name, Belongs.Unit, Nature.Action, "lapped",
        Minutes, Grit)
    {
        Example = """{"kind":"lap","minutes":2,"grit":120}""",
    };
}
