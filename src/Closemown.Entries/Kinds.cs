using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>Every kind of entry there is.</summary>
public static class Kinds
{
    private static readonly Dictionary<string, KindSpec> ByName;

    static Kinds()
    {
        KindSpec[] general =
        [
            new("decline", Belongs.Unit, Nature.Action, "this advice was not followed", Text("advice", "id of the advice").Must()) { Example = """{"kind":"decline","advice":"next-1"}""" },
            new("void", Belongs.Nothing, Nature.Action, "just takes out the entry named in voids") { Example = """{"kind":"void","voids":"01900000-0000-7000-8000-000000000001"}""" },
        ];
        All = [.. SteelKinds.All, .. TurfKinds.All, .. general];
        ByName = All.ToDictionary(k => k.Name, StringComparer.Ordinal);
    }

    public static IReadOnlyList<KindSpec> All { get; }

    /// <summary>Names kept for later: nothing can be written under them yet.</summary>
    public static IReadOnlyList<string> Reserved { get; } = ["inspect", "photo"];

    /// <summary>The kind of that name, or null.</summary>
    public static KindSpec? Find(string name) => ByName.GetValueOrDefault(name);

    /// <summary>The kind of that name.</summary>
    /// <exception cref="KeyNotFoundException">There is none: a fault of the program.</exception>
    public static KindSpec Get(string name) => ByName[name];
}
