using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>An entry of the kind <c>feed</c>: fed.</summary>
public static class FeedEntry
{
    public const string Name = "feed";

    /// <summary>Nitrogen, g/m².</summary>
    public static Field<double> NGm2 { get; } = Number("nGm2", 0, 100, "nitrogen, g/m²").Must();

    /// <summary>What the label says.</summary>
    public static Field<string> Label { get; } = Text("label", "what the label says").OnlyKept();

    public static KindSpec Kind { get; } = new(Name, Belongs.Area, Nature.Action, "fed",
        NGm2, Label)
    {
        Example = """{"kind":"feed","area":"green","nGm2":1.5}""",
    };
}
