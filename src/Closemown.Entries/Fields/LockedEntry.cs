namespace Closemown.Entries;

/// <summary>An entry of the kind <c>locked</c>: the height nuts tightened.</summary>
public static class LockedEntry
{
    public const string Name = "locked";

    public static KindSpec Kind { get; } = new(Name, Belongs.Unit, Nature.Action, "the height nuts tightened")
    {
        Example = """{"kind":"locked"}""",
    };
}
