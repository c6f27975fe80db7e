using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>An entry of the kind <c>fit</c>: whether any check can be believed.</summary>
public static class FitEntry
{
    public const string Name = "fit";

    /// <summary>Play in the left bearing.</summary>
    public static Field<string> PlayLeft { get; } = Word("playLeft", "play in the left bearing", "none", "felt", "knocks");

    /// <summary>Play in the right bearing.</summary>
    public static Field<string> PlayRight { get; } = Word("playRight", "play in the right bearing", "none", "felt", "knocks");

    /// <summary>Screws of the bedknife.</summary>
    public static Field<string> KnifeScrews { get; } = Word("knifeScrews", "screws of the bedknife", "tight", "loose");

    /// <summary>Free.</summary>
    public static Field<string> Adjusters { get; } = Word("adjusters", "adjusters", "free", "stiff", "slipping");

    /// <summary>Straight.</summary>
    public static Field<string> Blades { get; } = Word("blades", "blades", "straight", "bent", "nicked");

    public static KindSpec Kind { get; } = new(Name, Belongs.Unit, Nature.Reading, "whether any check can be believed",
        PlayLeft, PlayRight, KnifeScrews, Adjusters, Blades)
    {
        OneOf = [[PlayLeft.Name, PlayRight.Name, KnifeScrews.Name, Adjusters.Name, Blades.Name]],
        Example = """{"kind":"fit","playLeft":"none","playRight":"none","knifeScrews":"tight","adjusters":"free","blades":"straight"}""",
    };
}
