using System.Text;
using Closemown.Entries;
using Closemown.Quantities;

namespace Closemown.Typing;

/// <summary>What an entry about the turf says, in a line: "5 mm of water on green", "1 kg/m² of sand topdressed on green".</summary>
/// <remarks>One table for all of them. A row has heads, of which the first whose places are all known is taken, and parts, of which those that are
/// known follow. A place is a field's name in braces, or area. Forms with | between them are tried in their order.</remarks>
internal static class TurfEcho
{
    private const string Label = "label: {label}";

    private static readonly (string Kind, string What, string Heads, string[] Parts)[] Table =
    [
        ("area", "", "{area}:|the turf:", ["{grass}-season grass", "{species}", "{m2}", "latitude {lat}", "longitude {lon}", "{altitudeM} above the sea", "time zone {zone}", "roots {rootMm} deep", "holds {fieldCapacity} of its volume in water after draining", "wilts at {wiltingPoint}"]),
        ("mow", "", "{area} mown for {hours}|{area} mown|mown for {hours}|mown", ["{areaM2} of it", "{passes} times over", "bench height {benchMm}", "cut at {cutMm}"]),
        ("canopy", "", "{area} stands {mm} high|{area} stands {lowMm} to {highMm} high|{area} stands at least {lowMm} high|{area} stands at most {highMm} high", ["{when} mowing", "read by {how}", "in steps of {stepMm}"]),
        ("look", "", "{area} looks {colour}|{area}:", ["tips {tips}", "{cameOff} came off", "{scalpPct} scalped", "{soft}", "thatch {thatchMm}", "{frost}", "{frozenSoil}", "{wet}", "{footprints}"]),
        ("clippings", "", "{litres} of clippings from {areaM2} of {area}|{litres} of clippings from {area}", []),
        ("weather", "", "weather of {area} on {date}:", ["{tMinC} to {tMaxC}|at least {tMinC}|at most {tMaxC}", "mean {tMeanC}", "rain {rainMm}", "wind {windMs}", "read at {windHeightM}", "sun {sunH}", "radiation {radMjM2} MJ/m²", "humidity {rhPct}", "humidity {rhMinPct} to {rhMaxPct}|humidity at least {rhMinPct}|humidity at most {rhMaxPct}", "dew point {dewC}", "{forecast}", "from {source}"]),
        ("water", "", "{mm} of water on {area}", ["caught in the cans {cansMm}"]),
        ("feed", "", "{nGm2} of nitrogen on {area}", [Label]),
        ("treat", "", "{area} treated with {what}", [Label]),
        ("work", "topdress", "{kgM2} of sand topdressed on {area}|{area} topdressed", ["{depthMm} deep"]),
        ("work", "brush", "{area} brushed", ["{kgM2}", "{depthMm} deep"]),
        ("work", "roll", "{area} rolled", ["{kgM2}", "{depthMm} deep"]),
        ("work", "groom", "{area} groomed", ["{kgM2}", "{depthMm} deep"]),
        ("work", "verticut", "{area} verticut", ["{depthMm} deep", "{kgM2}"]),
        ("work", "aerate", "{area} aerated", ["{depthMm} deep", "{kgM2} of sand worked in"]),
        ("work", "overseed", "{area} overseeded", ["{kgM2} of seed", "{depthMm} deep"]),
        ("soil-test", "", "soil of {area}:", ["{others}"]),
        ("pace", "", "a ball rolls {up} up and {down} down on {area}|a ball rolls {up} up on {area}|a ball rolls {down} down on {area}|a ball rolls for {s} on {area}", []),
        ("wish", "", "wished for {area}:", ["a cut of {cutMm} by {byDate}|a cut of {cutMm}|the height by {byDate}", "mown on {weekdays}", "{minutesADay} a day", "matches on {fixtures}", "no change of height in the {noHeightChangeDays} days before a match"]),
    ];

    /// <summary>A flag in words: what yes and no say.</summary>
    private static readonly Dictionary<string, (string Yes, string No)> Flags = new()
    {
        ["soft"] = ("soft underfoot", "firm underfoot"),
        ["frost"] = ("frost on it", "no frost"),
        ["frozenSoil"] = ("soil frozen", "soil not frozen"),
        ["wet"] = ("wet", "dry"),
        ["footprints"] = ("footprints stay", "no footprints stay"),
        ["forecast"] = ("a forecast", "a record"),
    };

    /// <summary>The line; null for an entry of another kind.</summary>
    public static string? Of(Entry e, WritingStyle style)
    {
        if (Array.Find(Table, r => r.Kind == e.Kind.Name && (r.What.Length == 0 || r.What == e[WorkEntry.What])) is not { Heads: { } heads } row) return null;
        var values = new EchoValues(e, style, Flags);
        var head = First(heads, values) ?? e.Kind.Name + ":";
        var parts = row.Parts.Select(p => First(p, values)).OfType<string>().ToList();
        if (!e.Kind.OtherFieldsAreNumbers) parts.AddRange(e.Others.Select(o => $"{o.Key} {o.Value}"));
        return parts.Count == 0 ? head.TrimEnd(':') : head + (head.EndsWith(':') ? " " : ", ") + string.Join(", ", parts);
    }

    private static string? First(string forms, EchoValues values) => forms.Split('|').Select(f => Filled(f, values)).FirstOrDefault(f => f is not null);

    /// <summary>A form with its places filled in; null where one is not known. Braces in a value are text.</summary>
    private static string? Filled(string form, EchoValues values)
    {
        var said = new StringBuilder();
        var at = 0;
        while (form.IndexOf('{', at) is var open and >= 0)
        {
            var close = form.IndexOf('}', open);
            if (values.Of(form[(open + 1)..close]) is not { } value) return null;
            said.Append(form, at, open - at).Append(value);
            at = close + 1;
        }
        return said.Append(form, at, form.Length - at).ToString();
    }
}
