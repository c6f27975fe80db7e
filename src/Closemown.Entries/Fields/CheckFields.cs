using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>What any check of reel and bedknife may carry.</summary>
public static class CheckFields
{
    /// <summary>Which blade, counted from a mark.</summary>
    public static Field<string> Blade { get; } = Text("blade", "which blade, counted from a mark");

    /// <summary>State of the machine.</summary>
    public static Field<string> State { get; } = Word("state", "state of the machine", "cold", "just-run", "sun");
}
