using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>An entry of the kind <c>unit</c>: a cutting unit is described (again); only the fields named change.</summary>
public static class UnitEntry
{
    public const string Name = "unit";

    /// <summary>Blades of the reel.</summary>
    public static Field<double> Blades { get; } = Whole("blades", 2, 30, "blades of the reel");

    /// <summary>Diameter of the reel, mm.</summary>
    public static Field<double> ReelMm { get; } = Number("reelMm", 20, 600, "diameter of the reel, mm").OnlyKept();

    /// <summary>Width of cut, mm.</summary>
    public static Field<double> WidthMm { get; } = Number("widthMm", 100, 2000, "width of cut, mm");

    /// <summary>What one click moves one end, µm.</summary>
    public static Field<double> ClickUm { get; } = Number("clickUm", 0.1, 2000, "what one click moves one end, µm");

    /// <summary>How far off that may be, µm (one standard deviation).</summary>
    public static Field<double> ClickSdUm { get; } = Number("clickSdUm", 0.001, 500, "how far off that may be, µm (one standard deviation)");

    /// <summary>What one step of the adjuster is called.</summary>
    public static Field<string> AdjusterStep { get; } = Word("adjusterStep", "what one step of the adjuster is called", "click", "flat", "notch");

    /// <summary>The way an adjuster turns to bring reel and bedknife together.</summary>
    public static Field<string> InTurns { get; } = Word("inTurns", "the way an adjuster turns to bring reel and bedknife together", "clockwise", "anticlockwise");

    /// <summary>Adjusters left and right, mm from the middle, left negative.</summary>
    public static Field<IReadOnlyList<double>> AdjusterAtMm { get; } = Numbers("adjusterAtMm", 2, -1500, 1500, "adjusters left and right, mm from the middle, left negative");

    /// <summary>Stations left, centre, right, mm from the middle, left negative.</summary>
    public static Field<IReadOnlyList<double>> StationAtMm { get; } = Numbers("stationAtMm", 3, -1500, 1500, "stations left, centre, right, mm from the middle, left negative");

    /// <summary>How the maker wants it set.</summary>
    public static Field<string> Setting { get; } = Word("setting", "how the maker wants it set", "light-contact", "clear");

    /// <summary>Clearance in tolerance from … to …, µm.</summary>
    public static Field<IReadOnlyList<double>> BandUm { get; } = Numbers("bandUm", 2, -500, 500, "clearance in tolerance from … to …, µm");

    /// <summary>Gap + bluntness at which half the leaves tear, µm.</summary>
    public static Field<double> CleanUm { get; } = Number("cleanUm", 1, 500, "gap + bluntness at which half the leaves tear, µm");

    /// <summary>How far off that may be, µm.</summary>
    public static Field<double> CleanSdUm { get; } = Number("cleanSdUm", 0.1, 200, "how far off that may be, µm");

    /// <summary>Whether the blades have a relief grind.</summary>
    public static Field<string> Relief { get; } = Word("relief", "whether the blades have a relief grind", "yes", "no");

    /// <summary>Grits of compound at hand, mesh numbers.</summary>
    public static Field<IReadOnlyList<double>> Grits { get; } = Numbers("grits", 0, 10, 3000, "grits of compound at hand, mesh numbers");

    /// <summary>Diameter of the front roller, mm.</summary>
    public static Field<double> RollerFrontMm { get; } = Number("rollerFrontMm", 5, 400, "diameter of the front roller, mm");

    /// <summary>Diameter of the rear roller, mm.</summary>
    public static Field<double> RollerRearMm { get; } = Number("rollerRearMm", 5, 400, "diameter of the rear roller, mm");

    /// <summary>Front roller.</summary>
    public static Field<string> RollerKind { get; } = Word("rollerKind", "front roller", "smooth", "grooved");

    /// <summary>Distance between the roller axes, mm.</summary>
    public static Field<double> RollerSpanMm { get; } = Number("rollerSpanMm", 20, 2000, "distance between the roller axes, mm");

    /// <summary>Bedknife edge from the front roller's axis, mm.</summary>
    public static Field<IReadOnlyList<double>> EdgeAtMm { get; } = Numbers("edgeAtMm", 2, -1000, 1000, "bedknife edge from the front roller's axis, mm");

    /// <summary>What the bedknife reaches below its edge, mm.</summary>
    public static Field<double> LipMm { get; } = Number("lipMm", 0, 30, "what the bedknife reaches below its edge, mm");

    /// <summary>Angle of the bedknife, degrees.</summary>
    public static Field<double> AttitudeDeg { get; } = Number("attitudeDeg", -45, 45, "angle of the bedknife, degrees").OnlyKept();

    /// <summary>Height a turn of the height screw makes, mm.</summary>
    public static Field<double> ScrewMmPerTurn { get; } = Number("screwMmPerTurn", 0.01, 20, "height a turn of the height screw makes, mm");

    /// <summary>Lever ratio of the height screw.</summary>
    public static Field<double> ScrewLever { get; } = Number("screwLever", 0.01, 100, "lever ratio of the height screw");

    /// <summary>Travel between two blade passes, mm.</summary>
    public static Field<double> ClipMm { get; } = Number("clipMm", 0.5, 50, "travel between two blade passes, mm");

    /// <summary>Flats of the nut or head that turns the height screw.</summary>
    public static Field<double> ScrewFlats { get; } = Whole("screwFlats", 3, 24, "flats of the nut or head that turns the height screw");

    /// <summary>Lowest and highest bench height that the screws reach, mm.</summary>
    public static Field<IReadOnlyList<double>> BenchRangeMm { get; } = Numbers("benchRangeMm", 2, 0, 200, "lowest and highest bench height that the screws reach, mm");

    /// <summary>The trailing end of the cut.</summary>
    public static Field<string> Trailing { get; } = Word("trailing", "the trailing end of the cut", "left", "right").OnlyKept();

    /// <summary>What is at hand.</summary>
    public static Field<IReadOnlyList<string>> Owns { get; } = Words("owns", "what is at hand", "strip", "feeler", "gauge", "grinder", "torch");

    /// <summary>Starting values: {name: [mean, sd]}.</summary>
    public static Field<IReadOnlyDictionary<string, Prior>> Priors { get; } = PriorsOf("priors", "starting values: {name: [mean, sd]}");

    public static KindSpec Kind { get; } = new(Name, Belongs.Unit, Nature.Description, "a cutting unit is described (again); only the fields named change",
        Blades, ReelMm, WidthMm, ClickUm, ClickSdUm, AdjusterStep, InTurns, AdjusterAtMm, StationAtMm, Setting, BandUm, CleanUm,
        CleanSdUm, Relief, Grits, RollerFrontMm, RollerRearMm, RollerKind, RollerSpanMm, EdgeAtMm, LipMm, AttitudeDeg,
        ScrewMmPerTurn, ScrewLever, ClipMm, ScrewFlats, BenchRangeMm, Trailing, Owns, Priors)
    {
        Example = """{"kind":"unit","unit":"cylinder","blades":10,"clickUm":19,"grits":[80,120]}""",
    };
}
