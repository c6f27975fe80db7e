using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>An entry of the kind <c>torch</c>: bright line on the edge under a torch: bluntness alone.</summary>
public static class TorchEntry
{
    public const string Name = "torch";

    /// <summary>What was found at the left.</summary>
    public static Field<string> Left { get; } = Word(Stations.Left, "what was found at the left", "none", "thin", "wide");

    /// <summary>What was found in the centre.</summary>
    public static Field<string> Centre { get; } = Word(Stations.Centre, "what was found in the centre", "none", "thin", "wide");

    /// <summary>What was found at the right.</summary>
    public static Field<string> Right { get; } = Word(Stations.Right, "what was found at the right", "none", "thin", "wide");

    public static KindSpec Kind { get; } = new(Name, Belongs.Unit, Nature.Reading, "bright line on the edge under a torch: bluntness alone",
        Left, Centre, Right, CheckFields.Blade, CheckFields.State)
    {
        OneOf = [[Stations.Left, Stations.Centre, Stations.Right]],
        Example = """{"kind":"torch","left":"thin","centre":"thin","right":"wide"}""",
    };
}
