using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>An entry of the kind <c>swath</c>: what the mown strip looks like from behind.</summary>
public static class SwathEntry
{
    public const string Name = "swath";

    /// <summary>What was found at the left.</summary>
    public static Field<string> Left { get; } = Word(Stations.Left, "what was found at the left", "clean", "ragged", "uncut");

    /// <summary>What was found in the centre.</summary>
    public static Field<string> Centre { get; } = Word(Stations.Centre, "what was found in the centre", "clean", "ragged", "uncut");

    /// <summary>What was found at the right.</summary>
    public static Field<string> Right { get; } = Word(Stations.Right, "what was found at the right", "clean", "ragged", "uncut");

    /// <summary>What was heard.</summary>
    public static Field<string> Sound { get; } = Word("sound", "what was heard", "quiet", "ticks", "louder");

    public static KindSpec Kind { get; } = new(Name, Belongs.Unit, Nature.Reading, "what the mown strip looks like from behind",
        Left, Centre, Right, Sound, CheckFields.Blade, CheckFields.State)
    {
        OneOf = [[Left.Name, Centre.Name, Right.Name, Sound.Name]],
        Example = """{"kind":"swath","left":"clean","centre":"clean","right":"ragged"}""",
    };
}
