namespace Closemown.Steel.Reckonings;

/// <summary>Forward travel between two blade passes.</summary>
/// <remarks>
/// clip = v / (z · n): forward speed over blades times revolutions per time (definition of feed per cutting edge).
/// Worked: 6.0 km/h, 15 blades, 2200 /min give 3.0303 mm.
/// </remarks>
public static class Clip
{
    private const double SecondsPerMinute = 60;
    private const double MmPerMetre = 1000;

    /// <summary>Travel per blade, mm.</summary>
    /// <param name="metresPerSecond">Forward speed, m/s; above 0, for a mower walked behind at most about 3.</param>
    /// <param name="blades">Blades of the reel; 1 or more, 5 to 15 are usual.</param>
    /// <param name="perMinute">Revolutions of the reel, 1/min; above 0, 300 to 2500 are usual.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static double Mm(double metresPerSecond, double blades, double perMinute)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(metresPerSecond);
        ArgumentOutOfRangeException.ThrowIfLessThan(blades, 1);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(perMinute);
        return metresPerSecond * MmPerMetre * SecondsPerMinute / (blades * perMinute);
    }

    /// <summary>Cuts in a metre of travel, from the travel per blade in mm.</summary>
    public static double CutsPerMetre(double mm)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(mm);
        return MmPerMetre / mm;
    }
}
