namespace Closemown.Turf;

/// <summary>How much of its best growth the temperature allows, 0 to 1.</summary>
/// <remarks>
/// GP = exp(−½·((T − optimum)/spread)²), °C: cool-season 20 and 5.5, warm-season 31 and 7: Gelernter &amp; Stowell 2005, Golf Course Management 73(3):108; constants
/// as in Woods 2014. From 31 °C up the warm-season potential is 1 (the authors' later change; the form of 2005 would fall again). Made for monthly means: the
/// mean of daily potentials is lower or higher, as the curve bends. No range is published. It knows nothing of water, light or nitrogen.
/// </remarks>
/// <example>Cool-season at 8 °C: 0.092; at 25 °C: 0.66. Warm-season at 24 °C: 0.61. Both alike at 24.8 °C.</example>
public static class GrowthPotential
{
    /// <summary>Optimum and spread of cool-season grass, °C.</summary>
    public const double CoolOptimumC = 20, CoolSpreadC = 5.5;

    /// <summary>Optimum and spread of warm-season grass, °C.</summary>
    public const double WarmOptimumC = 31, WarmSpreadC = 7;

    /// <summary>Growth potential, 0 to 1.</summary>
    /// <param name="meanC">Mean air temperature, °C, −100 to 100.</param>
    /// <param name="grass">Kind of grass.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such temperature or grass.</exception>
    public static double Of(double meanC, TurfGrass grass)
    {
        Must.BeTemperature(meanC);
        return grass switch
        {
            TurfGrass.Cool => Bell(meanC, CoolOptimumC, CoolSpreadC),
            TurfGrass.Warm => Bell(Math.Min(meanC, WarmOptimumC), WarmOptimumC, WarmSpreadC),
            _ => throw new ArgumentOutOfRangeException(nameof(grass), grass, "No such grass."),
        };
    }

    private static double Bell(double x, double optimum, double spread)
    {
        var z = (x - optimum) / spread;
        return Math.Exp(-z * z / 2);
    }
}
