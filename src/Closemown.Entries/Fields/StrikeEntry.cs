using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>An entry of the kind <c>strike</c>: hit something.</summary>
public static class StrikeEntry
{
    public const string Name = "strike";

    /// <summary>Station.</summary>
    public static Field<string> Where { get; } = Word("where", "station", "left", "centre", "right");

    public static KindSpec Kind { get; } = new(Name, Belongs.Unit, Nature.Action, "hit something",
        Where)
    {
        Example = """{"kind":"strike","where":"left"}""",
    };
}
