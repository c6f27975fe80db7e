using Closemown.Entries;

namespace Closemown.Typing;

/// <summary>Fields by the names people type: with or without the unit at the end, any case, center for centre, and what else they say for it.</summary>
public static class FieldNames
{
    private static readonly string[] Units = ["Um", "Mm", "Turns", "MmPerTurn", "Deg", "Pct", "M2", "C", "Ms", "MjM2", "H"];

    /// <summary>Other names, by kind and field.</summary>
    private static readonly (string Kind, string Field, string[] Said)[] Other =
    [
        ("mow", "hours", ["time", "took"]),
        ("mow", "benchMm", ["height", "set", "setting"]),
        ("mow", "passes", ["pass", "times"]),
        ("canopy", "mm", ["height", "stands"]),
        ("canopy", "lowMm", ["above", "over", "least", "min"]),
        ("canopy", "highMm", ["below", "under", "most", "max"]),
        ("canopy", "stepMm", ["steps"]),
        ("look", "colour", ["color"]),
        ("look", "scalpPct", ["scalped", "scalping"]),
        ("look", "cameOff", ["off", "cameoff"]),
        ("look", "frozenSoil", ["soil"]),
        ("clippings", "areaM2", ["from"]),
        ("clippings", "litres", ["liters"]),
        ("weather", "date", ["day"]),
        ("water", "mm", ["amount", "water"]),
        ("feed", "nGm2", ["n", "nitrogen", "rate"]),
        ("treat", "what", ["product", "with"]),
        ("work", "kgM2", ["rate", "amount"]),
        ("work", "depthMm", ["deep"]),
        ("pace", "up", ["uphill"]),
        ("pace", "down", ["downhill"]),
        ("pace", "s", ["seconds", "time"]),
        ("wish", "cutMm", ["height", "target"]),
        ("wish", "byDate", ["by", "until", "date"]),
        ("wish", "weekdays", ["days", "weekday", "day"]),
        ("wish", "minutesADay", ["minutes", "time", "min"]),
        ("wish", "fixtures", ["match", "matches", "fixture"]),
        ("area", "m2", ["size", "area"]),
        ("area", "lat", ["latitude"]),
        ("area", "lon", ["long", "longitude", "lng"]),
        ("area", "altitudeM", ["altitude", "elevation"]),
        ("area", "rootMm", ["roots"]),
        ("area", "zone", ["timezone", "tz"]),
        ("lap", "minutes", ["time"]),
        ("lap", "grit", ["mesh"]),
        ("fit", "playLeft", ["left"]),
        ("fit", "playRight", ["right"]),
        ("fit", "knifeScrews", ["screws"]),
        ("paper-cut", "stripUm", ["paper"]),
        ("paper-drag", "stripUm", ["paper"]),
        ("square-up", "stripUm", ["paper"]),
        ("strip", "layers", ["sheets", "sheet", "leaves"]),
        ("unit", "screwMmPerTurn", ["turn", "pitch"]),
    ];

    /// <summary>The field that is meant; null where none is.</summary>
    public static FieldSpec? Find(KindSpec kind, string name)
    {
        var plain = name.Replace("-", "", StringComparison.Ordinal).Replace("_", "", StringComparison.Ordinal);
        if (plain.Equals("center", StringComparison.OrdinalIgnoreCase)) plain = "centre";
        return kind.Fields.FirstOrDefault(f => f.Name.Equals(plain, StringComparison.OrdinalIgnoreCase))
            ?? kind.Fields.FirstOrDefault(f => Short(f.Name).Equals(plain, StringComparison.OrdinalIgnoreCase))
            ?? (Array.Find(Other, o => o.Kind == kind.Name && o.Said.Contains(plain, StringComparer.OrdinalIgnoreCase)).Field is { } other ? kind.Fields[kind.IndexOf(other)] : null);
    }

    /// <summary>The name without the unit at its end.</summary>
    public static string Short(string name)
    {
        var unit = Units.FirstOrDefault(u => name.EndsWith(u, StringComparison.Ordinal) && name.Length > u.Length);
        return unit is null ? name : name[..^unit.Length];
    }

    /// <summary>The names of a kind's fields, for hints.</summary>
    public static IEnumerable<string> Said(KindSpec kind) => kind.Fields.SelectMany(f => new[] { f.Name, Short(f.Name) });

    /// <summary>What to say of a name that is no field of the kind.</summary>
    public static TypedFault Unknown(KindSpec kind, string name)
    {
        if (name is "by" or "note" or "at" or "voids" or "confirm") return new TypedFault($"{kind.Name} has no field \"{name}\".", $"It goes with any entry as an option: --{name} …");
        var near = Spelling.Nearest(name, kind.Fields.SelectMany(f => new[] { f.Name, Short(f.Name) }).Concat(Other.Where(o => o.Kind == kind.Name).SelectMany(o => o.Said)).Distinct());
        return new TypedFault($"{kind.Name} has no field \"{Spelling.Clip(name)}\".", near is not null ? $"Did you mean \"{near}\"?" : $"It has {string.Join(", ", kind.Fields.Select(f => f.Name))}.");
    }
}
