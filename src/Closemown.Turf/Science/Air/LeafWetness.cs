namespace Closemown.Turf;

/// <summary>Whether leaves are wet, from humidity alone.</summary>
/// <remarks>
/// An hour counts as wet from 90 % on: of three humidity models the constant threshold did best, right in 0.87 to 0.92 of the hours, false alarms 0.2 to 0.31
/// (Sentelhas et al. 2008, Agric. For. Meteorol. 148:392; the reference's volume from memory). A threshold of the place is better.
/// </remarks>
public static class LeafWetness
{
    /// <summary>Humidity from which an hour counts as wet, %.</summary>
    public const double ThresholdPct = 90;

    /// <summary>Whether an hour counts as wet.</summary>
    /// <param name="rhPct">Relative humidity of the hour, %, 0 to 100.</param>
    /// <param name="thresholdPct">Threshold, %, 0 to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static bool Wet(double rhPct, double thresholdPct = ThresholdPct)
    {
        Must.BePercent(rhPct);
        Must.BePercent(thresholdPct);
        return rhPct >= thresholdPct;
    }
}
