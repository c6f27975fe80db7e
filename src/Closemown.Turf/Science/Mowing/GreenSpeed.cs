namespace Closemown.Turf;

/// <summary>Ball roll, freed of the slope it was taken on.</summary>
/// <remarks>
/// 2·U·D/(U + D), the harmonic mean of the roll up and down: Brede 1991, Agron. J. 83:425, and USGA Green Section Record 28(6), 1990. Exact for a ball that slows evenly;
/// where it grows long downhill the plain mean is far too much. No range is published. All lengths in one unit.
/// </remarks>
/// <example>9 up, 14 down: 10.96; the plain mean says 11.5.</example>
public static class GreenSpeed
{
    /// <summary>How far both ways may differ for a plain mean, m: 18 in, by the booklet of the instrument, as quoted by Woods.</summary>
    public const double PlainMeanDifferenceM = 18 * 0.0254;

    /// <summary>Speed a ball leaves the ramp with, m/s: Holmes 1986 (from memory).</summary>
    public const double ReleaseMs = 1.83;

    /// <summary>Roll on the level, in the unit of both.</summary>
    /// <param name="up">Roll uphill, above 0.</param>
    /// <param name="down">Roll downhill, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not above 0.</exception>
    public static double Corrected(double up, double down)
    {
        Must.BePositive(up);
        Must.BePositive(down);
        return 2 * up / (up + down) * down;
    }

    /// <summary>How the turf slows the ball, m/s²: v²/(2·roll).</summary>
    /// <example>3.048 m (10 ft): 0.549.</example>
    /// <param name="rollM">Roll on the level, m, above 0.</param>
    /// <param name="releaseMs">Speed at the start, m/s, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not above 0.</exception>
    public static double DecelerationMs2(double rollM, double releaseMs = ReleaseMs)
    {
        Must.BePositive(rollM);
        Must.BePositive(releaseMs);
        return releaseMs * releaseMs / (2 * rollM);
    }
}
