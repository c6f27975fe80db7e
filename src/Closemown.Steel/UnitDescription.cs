using Closemown.Entries;

namespace Closemown.Steel;

/// <summary>What is known of a cutting unit by description; unknown things stay unknown.</summary>
public sealed record UnitDescription
{
    public required string Name { get; init; }

    public int? Blades { get; init; }

    public double WidthMm { get; init; } = SteelDefaults.WidthMm;

    /// <summary>Travel between two blade passes, mm, or null.</summary>
    public double? ClipMm { get; init; }

    /// <summary>One click as told, µm, or null.</summary>
    public double? ToldClickUm { get; init; }

    public double? ToldClickSdUm { get; init; }

    /// <summary>What one step of the adjuster is called: click, flat or notch.</summary>
    public string AdjusterStep { get; init; } = "click";

    /// <summary>The way an adjuster turns to come in, or null where it was not said.</summary>
    public string? InTurns { get; init; }

    public IReadOnlyList<double> AdjusterAtMm { get; init; } = SteelDefaults.AdjusterAtMm;

    public IReadOnlyList<double> StationAtMm { get; init; } = SteelDefaults.StationAtMm;

    /// <summary>Clearance in tolerance, µm.</summary>
    public (double Low, double High) BandUm { get; init; } = SteelDefaults.BandUm;

    public Prior CleanUm { get; init; } = SteelDefaults.CleanUm;

    /// <summary>Whether the blades have a relief grind; null where unknown.</summary>
    public bool? Relief { get; init; }

    /// <summary>Grits at hand; empty where not told.</summary>
    public IReadOnlyList<double> Grits { get; init; } = [];

    public IReadOnlySet<string> Owns { get; init; } = new HashSet<string>(StringComparer.Ordinal) { "strip", "gauge", "torch" };

    public IReadOnlyDictionary<string, Prior> Priors { get; init; } = new Dictionary<string, Prior>();

    /// <summary>The starting value of that name: the person's own, or the default.</summary>
    public Prior Start(string name, Prior byDefault) => Priors.TryGetValue(name, out var p) ? p : byDefault;

    /// <summary>One click before the record has taught anything, µm.</summary>
    public Prior ClickStart => Priors.TryGetValue("clickUm", out var p) ? p
        : ToldClickUm is { } told ? new(told, ToldClickSdUm ?? (told * SteelDefaults.ToldClickShare))
        : SteelDefaults.ClickUm;

    /// <summary>How much each end's clearance counts at a station: linear along the width, beyond the adjusters too.</summary>
    public (double Left, double Right) Weights(int station)
    {
        var span = AdjusterAtMm[1] - AdjusterAtMm[0];
        var right = (StationAtMm[station] - AdjusterAtMm[0]) / span;
        return (1 - right, right);
    }

    /// <summary>All entries that describe that unit, in order: a later one changes only the fields it names.</summary>
    public static UnitDescription Of(string name, IEnumerable<Entry> unitEntries)
    {
        ArgumentNullException.ThrowIfNull(unitEntries);
        var u = new UnitDescription { Name = name };
        return unitEntries.Aggregate(u, With);
    }

    /// <summary>Whether an entry tells what a unit is: a <c>unit</c> entry, or a grind that put a relief on the blades.</summary>
    /// <remarks>That holds for the laps before it too, which matter no more: the grind made the edges new.</remarks>
    public static bool Describes(Entry e)
    {
        ArgumentNullException.ThrowIfNull(e);
        return e.Is(UnitEntry.Kind) || (e.Is(GrindEntry.Kind) && e[GrindEntry.ReliefDone] == true);
    }

    private static UnitDescription With(UnitDescription u, Entry e)
    {
        if (e.Is(GrindEntry.Kind)) return e[GrindEntry.ReliefDone] == true ? u with { Relief = true } : u;
        var band = e[UnitEntry.BandUm] is { } b && b[0] < b[1] ? (b[0], b[1])
            : e[UnitEntry.Setting] switch
            {
                "light-contact" => SteelDefaults.LightContactBandUm,
                "clear" => SteelDefaults.ClearBandUm,
                _ => u.BandUm,
            };
        var priors = u.Priors;
        if (e[UnitEntry.Priors] is { } more)
        {
            var all = new Dictionary<string, Prior>(u.Priors);
            foreach (var (key, prior) in more) all[key] = prior;
            priors = all;
        }
        return u with
        {
            Blades = e[UnitEntry.Blades] is { } n ? (int)n : u.Blades,
            WidthMm = e[UnitEntry.WidthMm] ?? u.WidthMm,
            ClipMm = e[UnitEntry.ClipMm] ?? u.ClipMm,
            ToldClickUm = e[UnitEntry.ClickUm] ?? u.ToldClickUm,
            ToldClickSdUm = e[UnitEntry.ClickSdUm] ?? u.ToldClickSdUm,
            AdjusterStep = e[UnitEntry.AdjusterStep] ?? u.AdjusterStep,
            InTurns = e[UnitEntry.InTurns] ?? u.InTurns,
            AdjusterAtMm = e[UnitEntry.AdjusterAtMm] is { } a && a[1] - a[0] >= 20 ? a : u.AdjusterAtMm,
            StationAtMm = e[UnitEntry.StationAtMm] ?? u.StationAtMm,
            BandUm = band,
            CleanUm = new(e[UnitEntry.CleanUm] ?? u.CleanUm.Mean, e[UnitEntry.CleanSdUm] ?? u.CleanUm.Sd),
            Relief = e[UnitEntry.Relief] is { } r ? r == "yes" : u.Relief,
            Grits = e[UnitEntry.Grits] ?? u.Grits,
            Owns = e[UnitEntry.Owns] is { } o ? new HashSet<string>(o, StringComparer.Ordinal) : u.Owns,
            Priors = priors,
        };
    }
}
