namespace Closemown.Quantities;

/// <summary>Units of all that is no setting of the mower: areas, distances, warmth, rain, what is spread.</summary>
public enum TurfUnits
{
    /// <summary>m², m, °C, mm, m/s, g/m².</summary>
    Metric,

    /// <summary>sq ft, ft, °F, in, mph, lb/1000 sq ft, as in the US.</summary>
    American,
}
