using static Closemown.Quantities.UnitSlipKind;

namespace Closemown.Quantities;

/// <summary>
/// What the numbers of an entry can well be, by kind and field. All are assumptions of our own, common practice, no source, unless a
/// reason names one: they decide only whether a value is questioned, never what it is.
/// </summary>
public static class PlausibleRanges
{
    private const string NipReason =
        "The gap that matters is 0.001 to 0.002 in (25 to 51 µm), "
        + "and a 1 mm thread with 14 detents and a lever of 0.25 gives 17.9 µm a click.";

    private const string OneGo = "Steps are turned at most two a side, side by side in turn, and felt between.";

    private static readonly Dictionary<string, PlausibleRange> Table = Collect();

    /// <summary>All ranges; the key is <c>kind.field</c> as in an entry, <c>unit.clickUm</c>.</summary>
    public static IReadOnlyDictionary<string, PlausibleRange> All => Table;

    /// <summary>The range of a field of an entry, or null where any value is taken.</summary>
    /// <param name="kind">The entry's kind: <c>unit</c>, <c>mow</c>.</param>
    /// <param name="field">The field's name: <c>clickUm</c>, <c>hours</c>.</param>
    public static PlausibleRange? Find(string kind, string field) => Table.GetValueOrDefault(kind + "." + field);

    /// <summary>Narrower ranges of single fields, for what is entered by hand: what was kept or comes from another book or a weather station
    /// is not asked about again.</summary>
    public static IReadOnlyDictionary<string, PlausibleRange> ByHand { get; } = new Dictionary<string, PlausibleRange>(StringComparer.Ordinal)
    {
        // Two steps a side in turn, then feel: three at once is near it, more is not.
        ["clicks.left"] = new(-3, 3, "", "the number of clicks at once at the left", OneGo, TenTimes, TurnsOrClicks),
        ["clicks.right"] = new(-3, 3, "", "the number of clicks at once at the right", OneGo, TenTimes, TurnsOrClicks),
        ["water.mm"] = new(0.2, 40, "mm", "the water given at once", null, CmOrMm, InchOrMm),
        ["feed.nGm2"] = new(0.05, 10, "g/m²", "the nitrogen given at once", null, TenTimes),
        ["work.kgM2"] = new(0.05, 6, "kg/m²", "the dressing given at once", null, TenTimes),
        ["weather.tMinC"] = new(-25, 42, "°C", "the day's least temperature", null, FahrenheitOrCelsius),
        ["weather.tMaxC"] = new(-25, 42, "°C", "the day's greatest temperature", null, FahrenheitOrCelsius),
        ["weather.tMeanC"] = new(-25, 42, "°C", "the day's mean temperature", null, FahrenheitOrCelsius),
    };

    /// <summary>The range of a field that is entered by hand: the narrower one where there is one.</summary>
    public static PlausibleRange? FindByHand(string kind, string field) => ByHand.GetValueOrDefault(kind + "." + field) ?? Find(kind, field);

    // Plain calls, not tables of tuples: this is read at the first entry, and start-up counts.
    private static Dictionary<string, PlausibleRange> Collect()
    {
        var table = new Dictionary<string, PlausibleRange>(96, StringComparer.Ordinal);
        AddUnit(table);
        AddChecks(table);
        AddActions(table);
        AddTurf(table);
        AddWeather(table);
        return table;
    }

    private static void AddUnit(Dictionary<string, PlausibleRange> to)
    {
        to["unit.blades"] = new(3, 16, "", "the number of blades", null);
        to["unit.reelMm"] = new(60, 300, "mm", "the reel's diameter", null, InchOrMm, CmOrMm);
        to["unit.widthMm"] = new(200, 1100, "mm", "the width of cut", null, InchOrMm, CmOrMm);
        to["unit.clickUm"] = new(5, 60, "µm", "one click", NipReason, TenTimes, ThouOrHundredth, UmOrThou);
        to["unit.clickSdUm"] = new(0.1, 30, "µm", "the uncertainty of one click", null, TenTimes, UmOrThou);
        to["unit.adjusterAtMm"] = new(-600, 600, "mm", "an adjuster's place from the middle", null, CmOrMm);
        to["unit.stationAtMm"] = new(-600, 600, "mm", "a station's place from the middle", null, CmOrMm);
        to["unit.bandUm"] = new(-50, 150, "µm", "the wanted gap", "The gap that matters is 25 to 51 µm.", TenTimes, UmOrThou);
        to["unit.cleanUm"] = new(5, 150, "µm", "the gap that still cuts clean", null, TenTimes, UmOrThou);
        to["unit.cleanSdUm"] = new(0.5, 100, "µm", "the uncertainty of the gap that still cuts clean", null, TenTimes, UmOrThou);
        to["unit.grits"] = new(36, 1200, "", "the grit", null, TenTimes);
        to["unit.rollerFrontMm"] = new(30, 150, "mm", "the front roller's diameter", null, InchOrMm, CmOrMm);
        to["unit.rollerRearMm"] = new(30, 150, "mm", "the rear roller's diameter", null, InchOrMm, CmOrMm);
        to["unit.rollerSpanMm"] = new(80, 600, "mm", "the distance between the rollers", null, InchOrMm, CmOrMm);
        to["unit.edgeAtMm"] = new(-400, 400, "mm", "the bedknife edge's place", null, CmOrMm);
        to["unit.lipMm"] = new(0, 8, "mm", "the bedknife's lip", null, CmOrMm, InchOrMm);
        to["unit.attitudeDeg"] = new(-20, 20, "°", "the bedknife's attitude", null);
        to["unit.screwMmPerTurn"] =
            new(0.3, 3, "mm", "the height of one turn of the screw", "A turn is the thread's pitch times its lever.", TenTimes);
        to["unit.screwLever"] = new(0.1, 5, "", "the lever of the height screw", null, TenTimes);
        to["strip.um"] = new(15, 300, "µm", "the strip's thickness", "Copy paper is about 100 µm.", UmOrMm, UmOrThou, TenTimes);
        to["strip.sdUm"] = new(0.1, 60, "µm", "the uncertainty of the strip's thickness", null, UmOrMm, UmOrThou, TenTimes);
        to["strip.gsm"] = new(20, 250, "g/m²", "the paper's weight", "Copy paper is 80 g/m².", TenTimes);
        to["strip.stackMm"] = new(0.2, 5, "mm", "the stack's thickness", null, InchOrMm, UmOrMm, CmOrMm);
        to["strip.layers"] = new(1, 100, "", "the number of layers", null);
        to["strip.cutsToUm"] = new(-50, 400, "µm", "the gap at which the strip is still cut", null, UmOrThou, TenTimes);
        to["strip.foldsFromUm"] = new(-50, 400, "µm", "the gap from which the strip folds", null, UmOrThou, TenTimes);
    }

    private static void AddChecks(Dictionary<string, PlausibleRange> to)
    {
        foreach (string kind in new[] { "paper-cut", "paper-drag", "square-up" })
            to[kind + ".stripUm"] =
                new(15, 400, "µm", "the strip's thickness", "Copy paper is about 100 µm.", UmOrMm, UmOrThou, TenTimes);
        to["paper-cut.layers"] = new(1, 8, "", "the number of layers", null);
        to["feeler.goUm"] = new(5, 1000, "µm", "the feeler blade that goes in", null, UmOrMm, UmOrThou, TenTimes);
        to["feeler.noGoUm"] = new(5, 1000, "µm", "the feeler blade that does not go in", null, UmOrMm, UmOrThou, TenTimes);
        to["gauge.leftMm"] = new(1, 40, "mm", "the height at the left", null, InchOrMm, TenTimes);
        to["gauge.rightMm"] = new(1, 40, "mm", "the height at the right", null, InchOrMm, TenTimes);
        // Turf cut very low has spots below its cut; what is odd for one area is asked where its entries are at hand.
        to["canopy.mm"] = new(1, 60, "mm", "the standing height", null, InchOrMm, CmOrMm);
        to["canopy.lowMm"] = new(1, 60, "mm", "the least standing height", null, InchOrMm, CmOrMm);
        to["canopy.highMm"] = new(1, 60, "mm", "the greatest standing height", null, InchOrMm, CmOrMm);
        to["canopy.stepMm"] = new(0.05, 5, "mm", "the step of the scale", null, InchOrMm, TenTimes);
        to["look.scalpPct"] = new(0, 100, "%", "the scalped share", null);
        to["look.thatchMm"] = new(0, 60, "mm", "the thatch", null, CmOrMm);
        to["pace.up"] = new(0.5, 6, "m", "the roll uphill", null);
        to["pace.down"] = new(0.5, 8, "m", "the roll downhill", null);
        to["pace.s"] = new(5, 25, "s", "the time of the roll", null);
    }

    private static void AddActions(Dictionary<string, PlausibleRange> to)
    {
        to["clicks.left"] = new(-12, 12, "", "the number of clicks at the left", null, TenTimes, TurnsOrClicks);
        to["clicks.right"] = new(-12, 12, "", "the number of clicks at the right", null, TenTimes, TurnsOrClicks);
        to["screw.leftTurns"] = new(-10, 10, "", "the number of turns at the left", null, TenTimes, TurnsOrClicks);
        to["screw.rightTurns"] = new(-10, 10, "", "the number of turns at the right", null, TenTimes, TurnsOrClicks);
        to["lap.minutes"] = new(0.1, 60, "min", "the time of lapping", null, SecondOrMinute, MinuteOrHour);
        to["lap.grit"] = new(36, 1200, "", "the grit", null, TenTimes);
        to["mow.hours"] = new(0.01, 12, "h", "the time of mowing", null, MinuteOrHour);
        to["mow.areaM2"] = new(1, 20000, "m²", "the area mown", null, SquareFootOrMetre);
        to["mow.passes"] = new(1, 4, "", "the number of passes", null);
        to["mow.benchMm"] = new(2, 25, "mm", "the bench height", null, InchOrMm, TenTimes);
        to["mow.cutMm"] = new(2, 25, "mm", "the cut height", null, InchOrMm, TenTimes);
        to["wish.cutMm"] = new(2, 25, "mm", "the height wanted", null, InchOrMm, TenTimes);
        to["wish.minutesADay"] = new(1, 600, "min", "the time a day", null, MinuteOrHour);
        to["clippings.litres"] = new(0.01, 1000, "l", "the clippings", null, TenTimes);
        to["clippings.areaM2"] = new(1, 20000, "m²", "the area mown", null, SquareFootOrMetre);
        to["water.mm"] = new(0.2, 100, "mm", "the water", null, CmOrMm, InchOrMm);
        to["feed.nGm2"] = new(0.05, 20, "g/m²", "the nitrogen", null, TenTimes);
        to["work.kgM2"] = new(0.05, 20, "kg/m²", "the dressing", null, TenTimes);
        to["work.depthMm"] = new(0.2, 300, "mm", "the depth", null, InchOrMm, CmOrMm);
    }

    private static void AddTurf(Dictionary<string, PlausibleRange> to)
    {
        to["area.m2"] = new(1, 20000, "m²", "the area", null, SquareFootOrMetre);
        to["area.lat"] = new(-70, 70, "°", "the latitude", null);
        to["area.lon"] = new(-180, 180, "°", "the longitude", null);
        to["area.altitudeM"] = new(-430, 4500, "m", "the altitude", null);
        to["area.rootMm"] = new(10, 600, "mm", "the depth of the roots", null, CmOrMm, InchOrMm);
        to["area.fieldCapacity"] = new(0.05, 0.6, "", "the field capacity", null);
        to["area.wiltingPoint"] = new(0.01, 0.4, "", "the wilting point", null);
    }

    private static void AddWeather(Dictionary<string, PlausibleRange> to)
    {
        to["weather.tMinC"] = new(-40, 50, "°C", "the day's least temperature", null, FahrenheitOrCelsius);
        to["weather.tMaxC"] = new(-40, 50, "°C", "the day's greatest temperature", null, FahrenheitOrCelsius);
        to["weather.tMeanC"] = new(-40, 50, "°C", "the day's mean temperature", null, FahrenheitOrCelsius);
        to["weather.dewC"] = new(-40, 35, "°C", "the dew point", null, FahrenheitOrCelsius);
        foreach (string field in new[] { "rhPct", "rhMinPct", "rhMaxPct" })
            to["weather." + field] = new(1, 100, "%", "the relative humidity", null);
        to["weather.rainMm"] = new(0, 300, "mm", "the day's rain", null, TenTimes);
        to["weather.windMs"] = new(0, 30, "m/s", "the day's mean wind", null, KmHOrMs);
        to["weather.windHeightM"] = new(0.5, 100, "m", "the height of the wind reading", null);
        to["weather.sunH"] = new(0, 24, "h", "the hours of sun", null, MinuteOrHour);
        to["weather.radMjM2"] = new(0, 45, "MJ/m²", "the day's radiation", null);
    }
}
