using Closemown.Entries;

namespace Closemown.Turf;

/// <summary>What is known by description of a turf area; unknown things stay unknown and are named where a default takes their place.</summary>
public sealed record TurfArea
{
    /// <summary>The area's short name.</summary>
    public required string Name { get; init; }

    /// <summary>Cool- or warm-season; not told counts as cool.</summary>
    public TurfGrass Grass { get; init; }

    /// <summary>Species as told, or null.</summary>
    public string? Species { get; init; }

    /// <summary>Size, m², or null.</summary>
    public double? M2 { get; init; }

    /// <summary>Latitude, degrees, north positive, or null.</summary>
    public double? LatitudeDeg { get; init; }

    /// <summary>Longitude, degrees, east positive, or null.</summary>
    public double? LongitudeDeg { get; init; }

    /// <summary>Name of the time zone as told, or null.</summary>
    public string? Zone { get; init; }

    /// <summary>Height above the sea, m.</summary>
    public double AltitudeM { get; init; }

    /// <summary>The root zone, with defaults for what was not told.</summary>
    public RootZone Roots { get; init; } = new(AreaDefaults.FieldCapacity, AreaDefaults.WiltingPoint, AreaDefaults.RootMm);

    /// <summary>Whether any of the root zone was told.</summary>
    public bool RootsTold { get; init; }

    /// <summary>Latitude for the sun: as told, or the default.</summary>
    public double Latitude => LatitudeDeg ?? AreaDefaults.LatitudeDeg;

    /// <summary>The time of an instant here.</summary>
    public DateTime LocalTime(DateTimeOffset at) => CivilDay.LocalTime(at, Zone);

    /// <summary>The civil day of an instant here.</summary>
    public DateOnly LocalDate(DateTimeOffset at) => DateOnly.FromDateTime(LocalTime(at));

    /// <summary>The instant of a time of a civil day here.</summary>
    /// <param name="date">The day.</param>
    /// <param name="time">The time of day.</param>
    /// <param name="near">An instant whose offset counts where no zone was told.</param>
    public DateTimeOffset At(DateOnly date, TimeSpan time, DateTimeOffset near) => CivilDay.At(date.ToDateTime(TimeOnly.MinValue) + time, Zone, near.Offset);

    /// <summary>Growth in height at its best before the area has taught anything, mm a day, by species.</summary>
    public double FullRateMm => LeafGrowthOf(Species);

    /// <summary>How high the sward stands where nobody mows, mm, by species: nothing is believed to stand higher unless it was read.</summary>
    public double CeilingMm => CeilingOf(Species, Grass);

    /// <summary>All <c>area</c> entries of that area in order: a later one changes only the fields it names.</summary>
    /// <param name="name">The area.</param>
    /// <param name="areaEntries">Its entries of kind <c>area</c>, in order.</param>
    public static TurfArea Of(string name, IEnumerable<Entry> areaEntries)
    {
        ArgumentNullException.ThrowIfNull(areaEntries);
        var area = new TurfArea { Name = name };
        double? capacity = null, wilting = null, roots = null;
        foreach (var e in areaEntries)
        {
            area = area with
            {
                Grass = e[AreaEntry.Grass] switch { "warm" => TurfGrass.Warm, "cool" => TurfGrass.Cool, _ => area.Grass },
                Species = e[AreaEntry.Species] ?? area.Species,
                M2 = e[AreaEntry.M2] ?? area.M2,
                LatitudeDeg = e[AreaEntry.Lat] ?? area.LatitudeDeg,
                LongitudeDeg = e[AreaEntry.Lon] ?? area.LongitudeDeg,
                Zone = e[AreaEntry.Zone] ?? area.Zone,
                AltitudeM = e[AreaEntry.AltitudeM] ?? area.AltitudeM,
            };
            (capacity, wilting, roots) = (e[AreaEntry.FieldCapacity] ?? capacity, e[AreaEntry.WiltingPoint] ?? wilting, e[AreaEntry.RootMm] ?? roots);
        }
        var (high, low) = (capacity ?? AreaDefaults.FieldCapacity, wilting ?? AreaDefaults.WiltingPoint);
        // One of the two told alone may cross the other's default: then the untold one keeps its distance.
        if (high <= low) (high, low) = wilting is null ? (high, high / 3) : (Math.Min(1, low + AreaDefaults.FieldCapacity - AreaDefaults.WiltingPoint), low);
        if (high <= low) low = high / 3;
        return area with { Roots = new(high, low, roots ?? AreaDefaults.RootMm), RootsTold = (capacity ?? wilting ?? roots) is not null };
    }

    private static double LeafGrowthOf(string? species)
    {
        if (Says(species, "rye", "lolium")) return LeafGrowth.RyegrassMm;
        if (Says(species, "creeping", "stolonifera", "meadow", "poa", "annual")) return LeafGrowth.CreepingBentMm;
        return Says(species, "fescue", "festuca", "brown", "capillaris", "bent") ? LeafGrowth.FescueBrowntopMm : LeafGrowth.UntoldMm;
    }

    private static double CeilingOf(string? species, TurfGrass grass)
    {
        if (Says(species, "rye", "lolium")) return AreaDefaults.RyegrassCeilingMm;
        if (Says(species, "creeping", "stolonifera", "meadow", "poa", "annual")) return AreaDefaults.BentCeilingMm;
        if (Says(species, "fescue", "festuca", "brown", "capillaris", "bent")) return AreaDefaults.FescueCeilingMm;
        return grass == TurfGrass.Warm ? AreaDefaults.WarmCeilingMm : AreaDefaults.UntoldCeilingMm;
    }

    private static bool Says(string? species, params string[] words) => species is not null && words.Any(w => species.Contains(w, StringComparison.OrdinalIgnoreCase));
}
