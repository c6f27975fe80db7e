namespace Closemown.Turf;

/// <summary>Index of brown patch on perennial ryegrass; from 6 up its authors warn.</summary>
/// <remarks>
/// E = −21.5 + 0.15·RH + 1.4·Tmin − 0.033·Tmin²: Fidanza, Dernoeden &amp; Grybauskas 1996, Phytopathology 86:385 (abstract). The parabola peaks at 21.2 °C, so E falls
/// on hotter nights: a limit of the fit, not of the fungus, and such values are marked. A Kentucky extension note of 1999 prefers 5 as the threshold; on bentgrass in China the
/// index did poorly.
/// </remarks>
/// <example>85 %, 20 °C: 6.05.</example>
public static class BrownPatch
{
    /// <summary>The published threshold for warning.</summary>
    public const double Threshold = 6;

    private const double Intercept = -21.5, PerPct = 0.15, PerC = 1.4, PerC2 = -0.033;

    /// <summary>Night temperatures up to the fit's own peak; no range is printed.</summary>
    public static PublishedRange NightC { get; } = new("lowest temperature", 0, -PerC / (2 * PerC2), "°C");

    /// <summary>The index E, a pure number.</summary>
    /// <param name="meanRhPct">Mean relative humidity, %, 0 to 100.</param>
    /// <param name="tMinC">The day's lowest temperature, °C, −100 to 100; marked outside 0 to 21.2.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static Ranged Index(double meanRhPct, double tMinC)
    {
        Must.BePercent(meanRhPct);
        Must.BeTemperature(tMinC);
        return new(Intercept + (PerPct * meanRhPct) + (PerC * tMinC) + (PerC2 * tMinC * tMinC), NightC.MarkOf(tMinC));
    }
}
