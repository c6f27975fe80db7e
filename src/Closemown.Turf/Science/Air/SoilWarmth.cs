namespace Closemown.Turf;

/// <summary>How deep a wave of warmth reaches into the soil, and how late.</summary>
/// <remarks>
/// Conduction in a half space: the wave dies as exp(−z/d) and lags by z/d radians, d = √(2α/ω) = √(α·period/π).
/// Source: Campbell &amp; Norman 1998, <i>An Introduction to Environmental Biophysics</i>, ch. 2 (from memory). Holds by definition of its model: one kind of soil,
/// no rain seeping down.
/// </remarks>
/// <example>α 5·10⁻⁷ m²/s: the wave of a day reaches 0.117 m; that of a year lags 2.6 days at 0.1 m.</example>
public static class SoilWarmth
{
    private const double SecondsPerDay = 86400;

    /// <summary>Depth at which the wave is down to 1/e, m.</summary>
    /// <param name="diffusivityM2S">Thermal diffusivity α, m²/s, above 0; 2 to 8·10⁻⁷ are usual.</param>
    /// <param name="periodDays">Period of the wave, days, above 0: 1 or 365.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static double DampingDepthM(double diffusivityM2S, double periodDays = 1)
    {
        Must.BePositive(diffusivityM2S);
        Must.BePositive(periodDays);
        return Math.Sqrt(diffusivityM2S * periodDays * SecondsPerDay / Math.PI);
    }

    /// <summary>How late the wave comes at a depth, days.</summary>
    /// <param name="depthM">Depth, m, 0 or more.</param>
    /// <param name="diffusivityM2S">Thermal diffusivity α, m²/s, above 0.</param>
    /// <param name="periodDays">Period of the wave, days, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static double LagDays(double depthM, double diffusivityM2S, double periodDays = 365)
    {
        Must.NotBeNegative(depthM);
        return depthM / DampingDepthM(diffusivityM2S, periodDays) * periodDays / (2 * Math.PI);
    }
}
