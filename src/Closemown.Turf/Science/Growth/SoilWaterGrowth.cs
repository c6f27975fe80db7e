namespace Closemown.Turf;

/// <summary>How much of its growth the soil's water allows, 0 to 1.</summary>
/// <remarks>
/// (θ − θWP)/(θFC − θWP), a straight line from wilting point to field capacity: assumed so by Woods 2019, not measured. Outside those two it stays at 0 and 1.
/// </remarks>
/// <example>27 % of volume between 5 and 35 %: 0.73.</example>
public static class SoilWaterGrowth
{
    /// <summary>The share, 0 to 1.</summary>
    /// <param name="water">Water of the soil, share of volume, 0 to 1.</param>
    /// <param name="wiltingPoint">Share at wilting, 0 to 1.</param>
    /// <param name="fieldCapacity">Share that stays after draining, above the wilting point, to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static double Share(double water, double wiltingPoint, double fieldCapacity)
    {
        Must.Lie(water, 0, 1);
        RootZone.MustHold(fieldCapacity, wiltingPoint);
        return Math.Clamp((water - wiltingPoint) / (fieldCapacity - wiltingPoint), 0, 1);
    }
}
