using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>An entry of the kind <c>rebuild</c>: taken apart and put together, parts changed.</summary>
public static class RebuildEntry
{
    public const string Name = "rebuild";

    /// <summary>What was done or changed.</summary>
    public static Field<IReadOnlyList<string>> What { get; } = Texts("what", "what was done or changed").OnlyKept();

    /// <summary>A new bedknife.</summary>
    public static Field<bool> NewKnife { get; } = Flag("newKnife", "a new bedknife");

    /// <summary>The bedknife ground on its bar.</summary>
    public static Field<bool> GroundOnBar { get; } = Flag("groundOnBar", "the bedknife ground on its bar");

    public static KindSpec Kind { get; } = new(Name, Belongs.Unit, Nature.Action, "taken apart and put together, parts changed",
        What, NewKnife, GroundOnBar)
    {
        Example = """{"kind":"rebuild","what":["bearings"]}""",
    };
}
