namespace Closemown.Turf;

/// <summary>The root zone at the end of a day.</summary>
/// <param name="DepletionMm">Water missing below field capacity Dr, mm, 0 to the total.</param>
/// <param name="Ks">How much of its demand the turf could draw, 0 to 1.</param>
/// <param name="EvaporatedMm">What it drew, mm.</param>
/// <param name="DrainedMm">What ran through, mm.</param>
public readonly record struct WaterDay(double DepletionMm, double Ks, double EvaporatedMm, double DrainedMm);

/// <summary>The day's book of water of a root zone.</summary>
/// <remarks>
/// FAO-56 eq. 85: Dr = Dr before − rain − irrigation + Ks·Kc·ETo + deep percolation, without run-off and capillary rise; eq. 88 gives the percolation. Ks is that of
/// the depletion before the day; Dr stays in 0 to TAW (eq. 86). Every millimetre is kept account of: given = evaporated + drained + what the zone gained. Rain that was not
/// read is not rain of 0: say so before coming here. Source: Allen, Pereira, Raes &amp; Smith 1998, FAO Irrigation and Drainage Paper 56 (numbers 86 and 88 from memory).
/// </remarks>
/// <example>TAW 14.4 mm, p 0.4, depleted by 2 mm, demand 3.8 mm, no rain: 5.8 mm.</example>
public static class WaterBalance
{
    /// <summary>One day on.</summary>
    /// <param name="totalMm">Total available water TAW, mm, above 0.</param>
    /// <param name="fraction">Depletion fraction p, 0 to below 1.</param>
    /// <param name="depletionMm">Depletion before the day, mm, 0 to the total.</param>
    /// <param name="demandMm">What the turf would draw with water enough, Kc·ETo, mm, 0 or more.</param>
    /// <param name="waterMm">Rain and irrigation that went in, mm, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static WaterDay Day(double totalMm, double fraction, double depletionMm, double demandMm, double waterMm)
    {
        Must.NotBeNegative(demandMm);
        Must.NotBeNegative(waterMm);
        var ks = WaterStress.Ks(totalMm, fraction, depletionMm);
        var left = totalMm - depletionMm + waterMm;
        var evaporated = Math.Min(ks * demandMm, left);
        var after = depletionMm - waterMm + evaporated;
        return new(Math.Clamp(after, 0, totalMm), ks, evaporated, Math.Max(0, -after));
    }
}
