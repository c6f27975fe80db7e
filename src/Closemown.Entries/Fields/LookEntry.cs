using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>An entry of the kind <c>look</c>: how the turf looks.</summary>
public static class LookEntry
{
    public const string Name = "look";

    /// <summary>Green.</summary>
    public static Field<string> Colour { get; } = Word("colour", "colour", "green", "pale", "purple", "blue-grey", "yellow", "straw", "patches");

    /// <summary>Leaf tips.</summary>
    public static Field<string> Tips { get; } = Word("tips", "leaf tips", "clean", "ragged", "white");

    /// <summary>How much came off.</summary>
    public static Field<string> CameOff { get; } = Word("cameOff", "how much came off", "little", "usual", "much");

    /// <summary>Scalped, % of the area.</summary>
    public static Field<double> ScalpPct { get; } = Number("scalpPct", 0, 100, "scalped, % of the area");

    /// <summary>Soft underfoot.</summary>
    public static Field<bool> Soft { get; } = Flag("soft", "soft underfoot");

    /// <summary>Thatch, mm.</summary>
    public static Field<double> ThatchMm { get; } = Number("thatchMm", 0, 200, "thatch, mm").OnlyKept();

    /// <summary>Frost on it.</summary>
    public static Field<bool> Frost { get; } = Flag("frost", "frost on it");

    /// <summary>Soil frozen.</summary>
    public static Field<bool> FrozenSoil { get; } = Flag("frozenSoil", "soil frozen");

    /// <summary>Wet.</summary>
    public static Field<bool> Wet { get; } = Flag("wet", "wet");

    /// <summary>Footprints stay.</summary>
    public static Field<bool> Footprints { get; } = Flag("footprints", "footprints stay");

    public static KindSpec Kind { get; } = new(Name, Belongs.Area, Nature.Reading, "how the turf looks",
        Colour, Tips, CameOff, ScalpPct, Soft, ThatchMm, Frost, FrozenSoil, Wet, Footprints)
    {
        OneOf = [[Colour.Name, Tips.Name, CameOff.Name, ScalpPct.Name, Soft.Name, ThatchMm.Name, Frost.Name, FrozenSoil.Name, Wet.Name, Footprints.Name]],
        Example = """{"kind":"look","area":"green","colour":"green","tips":"clean"}""",
    };
}
