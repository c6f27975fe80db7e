namespace Closemown.Turf;

/// <summary>How much of its demand turf can still draw, Ks, 0 to 1.</summary>
/// <remarks>
/// FAO-56 eq. 84: Ks = (TAW − Dr)/((1 − p)·TAW) beyond the readily available water, else 1. Source: Allen, Pereira, Raes &amp; Smith 1998, FAO Irrigation and
/// Drainage Paper 56.
/// </remarks>
/// <example>TAW 14.4 mm, p 0.4, depleted by 10 mm: 0.509.</example>
public static class WaterStress
{
    /// <summary>Ks, 0 to 1.</summary>
    /// <param name="totalMm">Total available water TAW, mm, above 0.</param>
    /// <param name="fraction">Depletion fraction p, 0 to below 1.</param>
    /// <param name="depletionMm">Depletion Dr, mm, 0 to the total.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static double Ks(double totalMm, double fraction, double depletionMm)
    {
        Must.BePositive(totalMm);
        Must.Lie(fraction, 0, Math.BitDecrement(1));
        Must.Lie(depletionMm, 0, totalMm);
        return depletionMm <= fraction * totalMm ? 1 : (totalMm - depletionMm) / ((1 - fraction) * totalMm);
    }
}
