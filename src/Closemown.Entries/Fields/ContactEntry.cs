using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>An entry of the kind <c>contact</c>: turned backwards by hand: touch heard or felt.</summary>
public static class ContactEntry
{
    public const string Name = "contact";

    /// <summary>What was found at the left.</summary>
    public static Field<string> Left { get; } = Word(Stations.Left, "what was found at the left", "none", "light", "heavy", "once-a-turn");

    /// <summary>What was found in the centre.</summary>
    public static Field<string> Centre { get; } = Word(Stations.Centre, "what was found in the centre", "none", "light", "heavy", "once-a-turn");

    /// <summary>What was found at the right.</summary>
    public static Field<string> Right { get; } = Word(Stations.Right, "what was found at the right", "none", "light", "heavy", "once-a-turn");

    public static KindSpec Kind { get; } = new(Name, Belongs.Unit, Nature.Reading, "turned backwards by hand: touch heard or felt",
        Left, Centre, Right, CheckFields.Blade, CheckFields.State)
    {
        OneOf = [[Stations.Left, Stations.Centre, Stations.Right]],
        Example = """{"kind":"contact","left":"none","right":"light"}""",
    };
}
