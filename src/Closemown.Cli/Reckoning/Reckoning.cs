using Closemown.Quantities;
using Closemown.Steel.Reckonings;

namespace Closemown.Cli;

/// <summary>One input of a reckoning.</summary>
/// <param name="Name">Its key.</param>
/// <param name="Help">What it is, with its usual range.</param>
/// <param name="Read">Reads the text in the base unit, or gives the fault.</param>
/// <param name="Default">What holds where it is left out; null where it must be given.</param>
internal sealed record ReckoningKey(string Name, string Help, Func<string, WritingStyle, (double Value, ParseFault? Fault)> Read, double? Default = null);

/// <summary>A published formula that can be reckoned by hand.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Gives">What it gives.</param>
/// <param name="Unit">The unit of that.</param>
/// <param name="Formula">The formula.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="Keys">Its inputs.</param>
/// <param name="Of">The value.</param>
internal sealed record Reckoning(string Name, string Gives, string Unit, string Formula, string Source, IReadOnlyList<ReckoningKey> Keys, Func<double[], double> Of)
{
    /// <summary>More about the value, for people.</summary>
    public Func<double, WritingStyle, string?> Also { get; init; } = (_, _) => null;

    /// <summary>For what has a value at each side: left and right from the inputs as typed. The value is then their middle.</summary>
    public Func<IReadOnlyDictionary<string, string>, WritingStyle, (double Left, double Right)>? BySide { get; init; }

    /// <summary>For what is reckoned from the inputs as typed: the value, and what lies outside the published range (null inside).</summary>
    public Func<IReadOnlyDictionary<string, string>, WritingStyle, (double Value, string? Outside)>? ByName { get; init; }

    /// <summary>For what is in the unit of its inputs: that unit.</summary>
    public Func<IReadOnlyDictionary<string, string>, WritingStyle, string>? UnitOf { get; init; }

    /// <summary>All there are.</summary>
    public static IReadOnlyList<Reckoning> All { get; } =
    [
        new("clip", "forward travel between two blade passes", "mm", "clip = speed / (blades × rpm)", "definition of feed per cutting edge",
            [
                new("speed", "forward speed, like 4.8km/h; above 0, walked at most about 3 m/s", (t, s) => Speed.TryParse(t, s, SpeedUnit.MetrePerSecond, out var v, out var f) ? (v.MetresPerSecond, null) : (0, f)),
                new("blades", "blades of the reel, 1 or more", Plain),
                new("rpm", "turns of the reel a minute, above 0", (t, s) => Rotation.TryParse(t, s, RotationUnit.PerMinute, out var v, out var f) ? (v.PerMinute, null) : (0, f)),
            ],
            x => Clip.Mm(x[0], x[1], x[2]))
        { Also = (mm, style) => $"{new GapText(style).Decimals(Clip.CutsPerMetre(mm), 0)} cuts per metre" },
        new("share", "how much of the standing height one mowing takes", "", "share = (canopy − cut) / canopy", "definition",
            [new("canopy", "standing height, like 6mm; above 0", Mm), new("cut", "height cut at, like 4mm; 0 or more", Mm)],
            x => ShareRemoved.Of(x[0], x[1]))
        { Also = (share, _) => $"{Math.Round(share * 100):0} in 100 of the height" },
        new("click", "what one click of an adjuster moves its end", "µm", "click = pitch / detents × lever", "screw kinematics",
            [
                new("pitch", "pitch of the thread, like 1.25mm; above 0", Mm),
                new("detents", "clicks in a turn, 1 or more", Plain),
                new("lever", "travel of the edge over travel of the screw, above 0", Plain, 1),
            ],
            x => ClickSize.Um(x[0], x[1], x[2]))
        { Also = (um, style) => $"{new GapText(style with { Gap = GapUnit.Thou }).Number(um, true)} thou" },
        RollerReckoning.Bench,
        RollerReckoning.Screws,
        .. TurfReckoning.All,
    ];

    private static (double, ParseFault?) Plain(string text, WritingStyle style) => Number.TryParse(text, style, NumberUnit.One, out var v, out var f) ? (v.Value, null) : (0, f);

    private static (double, ParseFault?) Mm(string text, WritingStyle style) => Length.TryParse(text, style, LengthUnit.Mm, out var v, out var f) ? (v.Mm, null) : (0, f);
}
