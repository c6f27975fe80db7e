namespace Closemown.Turf;

/// <summary>When a growth regulator has run out: a sum of warmth since it was given.</summary>
/// <remarks>
/// The sum is of daily means above a base (<see cref="DegreeDays.Mean"/>). A threshold belongs to its own grass, agent and base: never compare one at base 0 with one at
/// base 10. What may be given, and how much, the label and the law decide.
/// </remarks>
/// <param name="BaseC">Base, °C.</param>
/// <param name="ThresholdCDays">Sum at which it is renewed, °C·day.</param>
public sealed record GrowthRegulator(double BaseC, double ThresholdCDays)
{
    /// <summary>
    /// Trinexapac-ethyl on creeping bentgrass greens: 200 °C·day, base 0 °C. Intervals of 100, 200, 400, 800 were tried: 100 and 200 kept clippings 20 to 30 % down; at
    /// longer ones growth rose above that of untreated turf after some 250 to 300. Kreuser &amp; Soldat 2011, Crop Sci. 51:2228.
    /// </summary>
    public static GrowthRegulator CreepingBentgrass { get; } = new(0, 200);

    /// <summary>On ultradwarf bermudagrass: 220 °C·day, base 10 °C. Reasor et al. 2018, as given by Parkes &amp; Reasor 2019.</summary>
    public static GrowthRegulator UltradwarfBermudagrass { get; } = new(10, 220);

    /// <summary>The clock after one more day. Who renews starts again at 0.</summary>
    /// <param name="sumCDays">Sum before the day, °C·day, 0 or more.</param>
    /// <param name="tMinC">Lowest temperature, °C, −100 to 100.</param>
    /// <param name="tMaxC">Highest temperature, °C, not below the lowest.</param>
    /// <returns>The sum with the day in it, and whether the threshold is reached.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public (double SumCDays, bool Due) After(double sumCDays, double tMinC, double tMaxC)
    {
        Must.NotBeNegative(sumCDays);
        var sum = sumCDays + DegreeDays.Mean(tMinC, tMaxC, BaseC);
        return (sum, sum >= ThresholdCDays);
    }
}
