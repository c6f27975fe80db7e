using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>The kinds of entry about a cutting unit: its description, its checks and what is done to its steel.</summary>
internal static class SteelKinds
{
    private static readonly string[][] AnyStation = [["left", "centre", "right"]];

    public static KindSpec[] All { get; } =
    [
        new("unit", Belongs.Unit, Nature.Description, "a cutting unit is described (again); only the fields named change",
            Whole("blades", 2, 30, "blades of the reel"),
            Number("reelMm", 20, 600, "diameter of the reel, mm"),
            Number("widthMm", 100, 2000, "width of cut, mm"),
            Number("clickUm", 0.1, 2000, "what one click moves one end, µm"),
            Number("clickSdUm", 0.001, 500, "how far off that may be, µm (one standard deviation)"),
            Word("adjusterStep", "what one step of the adjuster is called", "click", "flat", "notch"),
            Word("inTurns", "the way an adjuster turns to bring reel and bedknife together", "clockwise", "anticlockwise"),
            Numbers("adjusterAtMm", 2, -1500, 1500, "adjusters left and right, mm from the middle, left negative"),
            Numbers("stationAtMm", 3, -1500, 1500, "stations left, centre, right, mm from the middle, left negative"),
            Word("setting", "how the maker wants it set", "light-contact", "clear"),
            Numbers("bandUm", 2, -500, 500, "clearance in tolerance from … to …, µm"),
            Number("cleanUm", 1, 500, "gap + bluntness at which half the leaves tear, µm"),
            Number("cleanSdUm", 0.1, 200, "how far off that may be, µm"),
            Word("relief", "whether the blades have a relief grind", "yes", "no"),
            new("grits", FieldForm.Numbers, "grits of compound at hand, mesh numbers") { Low = 10, High = 3000 },
            Number("rollerFrontMm", 5, 400, "diameter of the front roller, mm"),
            Number("rollerRearMm", 5, 400, "diameter of the rear roller, mm"),
            Word("rollerKind", "front roller", "smooth", "grooved"),
            Number("rollerSpanMm", 20, 2000, "distance between the roller axes, mm"),
            Numbers("edgeAtMm", 2, -1000, 1000, "bedknife edge from the front roller's axis, mm"),
            Number("lipMm", 0, 30, "what the bedknife reaches below its edge, mm"),
            Number("attitudeDeg", -45, 45, "angle of the bedknife, degrees"),
            Number("screwMmPerTurn", 0.01, 20, "height a turn of the height screw makes, mm"),
            Number("screwLever", 0.01, 100, "lever ratio of the height screw"),
            Number("clipMm", 0.5, 50, "travel between two blade passes, mm"),
            Whole("screwFlats", 3, 24, "flats of the nut or head that turns the height screw"),
            Numbers("benchRangeMm", 2, 0, 200, "lowest and highest bench height that the screws reach, mm"),
            Word("trailing", "the trailing end of the cut", "left", "right"),
            Words("owns", "what is at hand", "strip", "feeler", "gauge", "grinder", "torch"),
            new("priors", FieldForm.Priors, "starting values: {name: [mean, sd]}")) { Example = """{"kind":"unit","unit":"cylinder","blades":10,"clickUm":19,"grits":[80,120]}""" },
        new("strip", Belongs.Unit, Nature.Description, "the paper strip in use",
            Number("um", 1, 2000, "thickness of one layer, µm"),
            Number("sdUm", 0.01, 500, "how far off that may be, µm"),
            Number("gsm", 5, 1000, "grammage, g/m²"),
            Number("stackMm", 0.01, 100, "thickness of a stack under calipers, mm"),
            Whole("layers", 1, 500, "layers in that stack"),
            Text("name", "a name of the person's own"),
            Number("cutsToUm", 0, 1000, "tried on a known gap: cuts up to this, µm"),
            Number("foldsFromUm", 0, 1000, "tried on a known gap: folds from this, µm"))
        { OneOf = [["um", "gsm", "stackMm"]], Example = """{"kind":"strip","um":80,"sdUm":3}""" },
        new("fit", Belongs.Unit, Nature.Reading, "whether any check can be believed",
            Word("playLeft", "play in the left bearing", "none", "felt", "knocks"),
            Word("playRight", "play in the right bearing", "none", "felt", "knocks"),
            Word("knifeScrews", "screws of the bedknife", "tight", "loose"),
            Word("adjusters", "adjusters", "free", "stiff", "slipping"),
            Word("blades", "blades", "straight", "bent", "nicked"))
        {
            OneOf = [["playLeft", "playRight", "knifeScrews", "adjusters", "blades"]],
            Example = """{"kind":"fit","playLeft":"none","playRight":"none","knifeScrews":"tight","adjusters":"free","blades":"straight"}""",
        },
        new("paper-cut", Belongs.Unit, Nature.Reading, "strip fed straight in, square to the bedknife",
            [.. AtStations("cuts", "nicks", "folds"), Number("stripUm", 1, 2000, "thickness of the strip, µm"),
            Whole("layers", 1, 20, "layers fed in together"), Flag("damp", "the strip was damp"), .. AnyCheck])
        { OneOf = AnyStation, Example = """{"kind":"paper-cut","left":"cuts","centre":"cuts","right":"folds"}""" },
        new("paper-drag", Belongs.Unit, Nature.Reading, "strip laid flat between blade and bedknife, pulled",
            [.. AtStations("tight", "slight", "loose"), Number("stripUm", 1, 2000, "thickness of the strip, µm"), .. AnyCheck])
        { OneOf = AnyStation, Example = """{"kind":"paper-drag","left":"slight","right":"loose"}""" },
        new("contact", Belongs.Unit, Nature.Reading, "turned backwards by hand: touch heard or felt",
            [.. AtStations("none", "light", "heavy", "once-a-turn"), .. AnyCheck])
        { OneOf = AnyStation, Example = """{"kind":"contact","left":"none","right":"light"}""" },
        new("torch", Belongs.Unit, Nature.Reading, "bright line on the edge under a torch: bluntness alone",
            [.. AtStations("none", "thin", "wide"), .. AnyCheck])
        { OneOf = AnyStation, Example = """{"kind":"torch","left":"thin","centre":"thin","right":"wide"}""" },
        new("swath", Belongs.Unit, Nature.Reading, "what the mown strip looks like from behind",
            [.. AtStations("clean", "ragged", "uncut"), Word("sound", "what was heard", "quiet", "ticks", "louder"), .. AnyCheck])
        { OneOf = [["left", "centre", "right", "sound"]], Example = """{"kind":"swath","left":"clean","centre":"clean","right":"ragged"}""" },
        new("feeler", Belongs.Unit, Nature.Reading, "feeler gauge: below, between, above",
            [.. Stations.All.Select(s => new FieldSpec(s, FieldForm.GoNoGo, "thickest that goes and thinnest that does not, µm") { Low = -100, High = 5000 }), .. AnyCheck])
        { OneOf = AnyStation, Example = """{"kind":"feeler","left":{"goUm":30,"noGoUm":50}}""" },
        new("clicks", Belongs.Unit, Nature.Action, "adjusters turned, + is in (towards each other)",
            HalfSteps("left", -60, 60, "steps of the left adjuster"),
            HalfSteps("right", -60, 60, "steps of the right adjuster"))
        { OneOf = [["left", "right"]], Example = """{"kind":"clicks","left":1,"right":1}""" },
        new("square-up", Belongs.Unit, Nature.Action, "both ends brought to the same slight drag",
            Number("stripUm", 1, 2000, "thickness of the strip, µm")) { Example = """{"kind":"square-up","stripUm":80}""" },
        new("lap", Belongs.Unit, Nature.Action, "lapped",
            Number("minutes", 0.01, 600, "minutes of lapping").Must(),
            Number("grit", 10, 3000, "mesh number of the compound")) { Example = """{"kind":"lap","minutes":2,"grit":120}""" },
        new("stone", Belongs.Unit, Nature.Action, "bedknife front filed, unworn ridges at its ends, a burr, a nick filed flush",
            Word("what", "what was filed", "face", "ends", "burr", "nick").Must()) { Example = """{"kind":"stone","what":"face"}""" },
        new("grind", Belongs.Unit, Nature.Action, "ground",
            Word("what", "what was ground", "reel", "bedknife", "both").Must(),
            Flag("reliefDone", "relief ground too")) { Example = """{"kind":"grind","what":"both","reliefDone":true}""" },
        new("rebuild", Belongs.Unit, Nature.Action, "taken apart and put together, parts changed",
            Texts("what", "what was done or changed"),
            Flag("newKnife", "a new bedknife"),
            Flag("groundOnBar", "the bedknife ground on its bar")) { Example = """{"kind":"rebuild","what":["bearings"]}""" },
        new("strike", Belongs.Unit, Nature.Action, "hit something",
            Word("where", "station", "left", "centre", "right")) { Example = """{"kind":"strike","where":"left"}""" },
        new("gauge", Belongs.Unit, Nature.Reading, "bench height read",
            Number("leftMm", 0, 200, "bench height at the left, mm"),
            Number("rightMm", 0, 200, "bench height at the right, mm"),
            Flag("locked", "read with the height nuts tight"),
            Text("study", "name of a gauge study"),
            Text("setting", "setting of that study"),
            Whole("trial", 1, 1000, "trial of that study"))
        { OneOf = [["leftMm", "rightMm"]], Example = """{"kind":"gauge","leftMm":5.0,"rightMm":5.1,"locked":true}""" },
        new("screw", Belongs.Unit, Nature.Action, "height screws turned, + raises",
            Number("leftTurns", -60, 60, "turns of the left screw"),
            Number("rightTurns", -60, 60, "turns of the right screw"))
        { OneOf = [["leftTurns", "rightTurns"]], Example = """{"kind":"screw","leftTurns":0.25}""" },
        new("locked", Belongs.Unit, Nature.Action, "the height nuts tightened") { Example = """{"kind":"locked"}""" },
        new("measure", Belongs.Unit, Nature.Reading, "steel measured",
            [Word("what", "what was measured", "reel", "knife-lip", "land", "roller-front", "roller-rear", "straightedge").Must(),
            .. Stations.All.Select(s => Number(s, -10, 600, $"what was measured {(s == Stations.Centre ? "in the centre" : "at the " + s)}, mm; of a straightedge the hollow of the bedknife, + is hollow")),
            Word("how", "what with", "caliper", "tape", "micrometer", "eye"),
            Number("sdMm", 0.0001, 20, "how far off that may be, mm"),
            Text("blade", "which blade, counted from a mark")])
        { OneOf = AnyStation, Example = """{"kind":"measure","what":"straightedge","centre":0.03}""" },
        new("service", Belongs.Unit, Nature.Action, "done to the machine, or to be done again",
            Text("what", "oil, grease, bearings, seals, belt, chain, plug, filter, battery, wash, store, start, knife-screws, or a word of the person's own").Must(),
            Number("meterH", 0, 100000, "hours on the meter"),
            Number("everyH", 0.1, 100000, "to be done again after so many hours"),
            Number("everyDays", 1, 10000, "to be done again after so many days"),
            Text("part", "which part was used"),
            Number("cost", 0, 1000000, "what it cost"),
            Text("currency", "in which money")) { Example = """{"kind":"service","what":"knife-screws"}""" },
    ];
}
