using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>An entry of the kind <c>treat</c>: treated: the label and local law decide.</summary>
public static class TreatEntry
{
    public const string Name = "treat";

    /// <summary>What.</summary>
    public static Field<string> What { get; } = Text("what", "what").Must();

    /// <summary>What the label says.</summary>
    public static Field<string> Label { get; } = Text("label", "what the label says").OnlyKept();

    public static KindSpec Kind { get; } = new(Name, Belongs.Area, Nature.Action, "treated: the label and local law decide",
        What, Label)
    {
        Example = """{"kind":"treat","area":"green","what":"growth regulator","label":"as printed"}""",
    };
}
