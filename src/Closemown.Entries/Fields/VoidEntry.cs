namespace Closemown.Entries;

/// <summary>An entry of the kind <c>void</c>: just takes out the entry named in voids.</summary>
public static class VoidEntry
{
    public const string Name = "void";

    public static KindSpec Kind { get; } = new(Name, Belongs.Nothing, Nature.Action, "just takes out the entry named in voids")
    {
        Example = """{"kind":"void","voids":"01900000-0000-7000-8000-000000000001"}""",
    };
}
