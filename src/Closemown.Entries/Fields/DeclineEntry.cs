using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>An entry of the kind <c>decline</c>: this advice was not followed.</summary>
public static class DeclineEntry
{
    public const string Name = "decline";

    /// <summary>Id of the advice.</summary>
    public static Field<string> Advice { get; } = Text("advice", "id of the advice").Must();

    public static KindSpec Kind { get; } = new(Name, Belongs.Unit, Nature.Action, "this advice was not followed",
        Advice)
    {
        Example = """{"kind":"decline","advice":"next-1"}""",
    };
}
