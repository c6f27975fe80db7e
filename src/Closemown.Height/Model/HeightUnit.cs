using Closemown.Entries;

namespace Closemown.Height;

/// <summary>What is known by description of a unit that stands on rollers; unknown things stay unknown.</summary>
public sealed record HeightUnit
{
    public required string Name { get; init; }

    /// <summary>What a turn raises its side as told (thread × lever), mm, or null.</summary>
    public double? ToldMmPerTurn { get; init; }

    /// <summary>Whether the front roller is grooved; not told counts as smooth.</summary>
    public bool Grooved { get; init; }

    /// <summary>What the bedknife reaches below its edge, mm, or null.</summary>
    public double? LipMm { get; init; }

    /// <summary>Width of cut, mm, or null.</summary>
    public double? WidthMm { get; init; }

    /// <summary>Distance between the places where the height is read, mm. Untold: 460.</summary>
    public double ReadApartMm { get; init; } = 460;

    /// <summary>Lowest and highest bench height that the screws reach, mm, or null.</summary>
    public (double Low, double High)? RangeMm { get; init; }

    /// <summary>Flats of the nut or head that turns the height screw, or null.</summary>
    public int? ScrewFlats { get; init; }

    /// <summary>Rollers and edge, or null while they are not told.</summary>
    public RollerGeometry? Geometry { get; init; }

    /// <summary>Starting values of the person's own.</summary>
    public IReadOnlyDictionary<string, Prior> Priors { get; init; } = new Dictionary<string, Prior>();

    /// <summary>The starting value of that name: the person's own, or the default.</summary>
    public Prior Start(string name, Prior byDefault) => Priors.TryGetValue(name, out var p) ? p : byDefault;

    /// <summary>What a turn raises its side before the record has taught anything, mm.</summary>
    public Prior MmPerTurnStart => Priors.TryGetValue("screwMmPerTurn", out var p) ? p
        : ToldMmPerTurn is { } told ? new(told, told * HeightDefaults.ToldThreadShare)
        : HeightDefaults.MmPerTurn;

    /// <summary>Scatter of the gauge before it is learned, mm.</summary>
    public double GaugeSdMm => Priors.TryGetValue("gaugeSdMm", out var p) && p.Mean > 0 ? p.Mean : HeightDefaults.GaugeSdMm;

    /// <summary>All <c>unit</c> entries of that unit in order: a later one changes only the fields it names.</summary>
    public static HeightUnit Of(string name, IEnumerable<Entry> unitEntries)
    {
        ArgumentNullException.ThrowIfNull(unitEntries);
        var entries = unitEntries.ToList();
        double? pitch = null, lever = null, lip = null, width = null, flats = null;
        IReadOnlyList<double>? stations = null, range = null;
        string? roller = null;
        var priors = new Dictionary<string, Prior>();
        foreach (var e in entries)
        {
            pitch = e[UnitEntry.ScrewMmPerTurn] ?? pitch;
            lever = e[UnitEntry.ScrewLever] ?? lever;
            lip = e[UnitEntry.LipMm] ?? lip;
            width = e[UnitEntry.WidthMm] ?? width;
            flats = e[UnitEntry.ScrewFlats] ?? flats;
            stations = e[UnitEntry.StationAtMm] ?? stations;
            range = e[UnitEntry.BenchRangeMm] ?? range;
            roller = e[UnitEntry.RollerKind] ?? roller;
            foreach (var (key, prior) in e[UnitEntry.Priors] ?? new Dictionary<string, Prior>()) priors[key] = prior;
        }
        return new()
        {
            Name = name,
            // A lever told without a thread says how the untold thread arrives.
            ToldMmPerTurn = pitch is null && lever is null ? null : (pitch ?? HeightDefaults.MmPerTurn.Mean) * (lever ?? 1),
            Grooved = roller == "grooved",
            LipMm = lip,
            WidthMm = width,
            ReadApartMm = stations is [var sl, _, var sr] && sr > sl ? sr - sl : 460,
            RangeMm = range is [var low, var high] && high > low ? (low, high) : null,
            ScrewFlats = (int?)flats,
            Geometry = RollerGeometry.Of(entries),
            Priors = priors,
        };
    }
}
