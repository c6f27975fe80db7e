using static Closemown.Entries.FieldForms;

namespace Closemown.Entries;

/// <summary>An entry of the kind <c>area</c>: a turf area; only the fields named change.</summary>
public static class AreaEntry
{
    public const string Name = "area";

    /// <summary>Cool- or warm-season grass.</summary>
    public static Field<string> Grass { get; } = Word("grass", "cool- or warm-season grass", "cool", "warm");

    /// <summary>Species.</summary>
    public static Field<string> Species { get; } = Text("species", "species");

    /// <summary>Size, m².</summary>
    public static Field<double> M2 { get; } = Number("m2", 1, 1e6, "size, m²");

    /// <summary>Latitude, degrees, north +.</summary>
    public static Field<double> Lat { get; } = Number("lat", -90, 90, "latitude, degrees, north +");

    /// <summary>Longitude, degrees, east +.</summary>
    public static Field<double> Lon { get; } = Number("lon", -180, 180, "longitude, degrees, east +");

    /// <summary>Time zone name.</summary>
    public static Field<string> Zone { get; } = Text("zone", "time zone name");

    /// <summary>Altitude, m.</summary>
    public static Field<double> AltitudeM { get; } = Number("altitudeM", -450, 6000, "altitude, m");

    /// <summary>Depth of the roots, mm.</summary>
    public static Field<double> RootMm { get; } = Number("rootMm", 5, 2000, "depth of the roots, mm");

    /// <summary>Water held after draining, share of volume.</summary>
    public static Field<double> FieldCapacity { get; } = Number("fieldCapacity", 0, 1, "water held after draining, share of volume");

    /// <summary>Water left at wilting, share of volume.</summary>
    public static Field<double> WiltingPoint { get; } = Number("wiltingPoint", 0, 1, "water left at wilting, share of volume");

    public static KindSpec Kind { get; } = new(Name, Belongs.Area, Nature.Description, "a turf area; only the fields named change",
        Grass, Species, M2, Lat, Lon, Zone, AltitudeM, RootMm, FieldCapacity, WiltingPoint)
    {
        Example = """{"kind":"area","area":"green","grass":"cool","m2":1200}""",
    };
}
