using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>An entry of the kind <c>stone</c>: bedknife front filed, unworn ridges at its ends, a burr, a nick filed flush.</summary>
public static class StoneEntry
{
    public const string Name = "stone";

    /// <summary>What was filed.</summary>
    public static Field<string> What { get; } = Word("what", "what was filed", "face", "ends", "burr", "nick").Must();

    public static KindSpec Kind { get; } = new(Name, Belongs.Unit, Nature.Action, "bedknife front filed, unworn ridges at its ends, a burr, a nick filed flush",
        What)
    {
        Example = """{"kind":"stone","what":"face"}""",
    };
}
