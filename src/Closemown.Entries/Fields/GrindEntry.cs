using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>An entry of the kind <c>grind</c>: ground.</summary>
public static class GrindEntry
{
    public const string Name = "grind";

    /// <summary>What was ground.</summary>
    public static Field<string> What { get; } = Word("what", "what was ground", "reel", "bedknife", "both").Must();

    /// <summary>Relief ground too.</summary>
    public static Field<bool> ReliefDone { get; } = Flag("reliefDone", "relief ground too");

    public static KindSpec Kind { get; } = new(Name, Belongs.Unit, Nature.Action, "ground",
        What, ReliefDone)
    {
        Example = """{"kind":"grind","what":"both","reliefDone":true}""",
    };
}
