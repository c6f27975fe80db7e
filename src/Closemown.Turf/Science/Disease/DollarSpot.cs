namespace Closemown.Turf;

/// <summary>Probability of dollar spot, from five days' warmth and humidity.</summary>
/// <remarks>
/// logit p = −11.4041 + 0.1932·T + 0.0894·RH, T the five-day mean of daily mean temperature in °C, RH that of relative humidity in %. The smaller number goes with
/// humidity: only so does the published chart come out (at 100 % and 10 °C it stays below one half, 0.37; the other way round it would be 1.00). Spraying from 0.20 on controlled
/// like a calendar on creeping bentgrass; its authors say to adjust that by site. Smith et al. 2018, PLoS ONE 13(3):e0194216. Meant for means of 10 to 35 °C
/// (from memory): below 10 °C show "not modelled", never a small number.
/// </remarks>
/// <example>20 °C, 80 %: 0.404.</example>
public static class DollarSpot
{
    /// <summary>The published threshold for treating.</summary>
    public const double Threshold = 0.20;

    /// <summary>Days the means are over.</summary>
    public const int Days = 5;

    private const double Intercept = -11.4041, PerC = 0.1932, PerPct = 0.0894;

    /// <summary>Five-day means the model is meant for (from memory).</summary>
    public static PublishedRange MeanC { get; } = new("five-day mean temperature", 10, 35, "°C");

    /// <summary>The probability, 0 to 1.</summary>
    /// <param name="meanC">Five-day mean temperature, °C, −100 to 100; marked outside 10 to 35.</param>
    /// <param name="meanRhPct">Five-day mean relative humidity, %, 0 to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static Ranged Probability(double meanC, double meanRhPct)
    {
        Must.BeTemperature(meanC);
        Must.BePercent(meanRhPct);
        return new(1 / (1 + Math.Exp(-(Intercept + (PerC * meanC) + (PerPct * meanRhPct)))), MeanC.MarkOf(meanC));
    }
}
