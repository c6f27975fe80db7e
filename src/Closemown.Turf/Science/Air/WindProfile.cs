namespace Closemown.Turf;

/// <summary>Wind at 2 m from wind at another height, over short grass.</summary>
/// <remarks>
/// FAO-56 eq. 47: u2 = uz·4.87/ln(67.8·z − 5.42), a logarithmic profile over a surface of 0.12 m. Its table of factors runs from 1 to 10.5 m (from memory).
/// Source: Allen, Pereira, Raes &amp; Smith 1998, FAO Irrigation and Drainage Paper 56.
/// </remarks>
/// <example>10 km/h at 10 m: 2.078 m/s at 2 m (FAO-56 example 18).</example>
public static class WindProfile
{
    /// <summary>Wind taken where none was read, m/s at 2 m: the mean of more than 2000 stations (FAO-56, chapter 3; the count from memory).</summary>
    public const double UntoldMs = 2;

    /// <summary>The height wanted, m: a reading there is left as it is (the rounded formula would add 0.02 %).</summary>
    public const double TargetM = 2;

    /// <summary>What the paper's table covers.</summary>
    public static PublishedRange HeightM { get; } = new("height of the wind reading", 1, 10.5, "m");

    /// <summary>Wind at 2 m, m/s.</summary>
    /// <param name="windMs">Wind as read, m/s, 0 to 120.</param>
    /// <param name="heightM">Height it was read at, m, 0.1 to 200 (below, the profile has no meaning); marked outside 1 to 10.5.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static Ranged At2M(double windMs, double heightM)
    {
        Must.Lie(windMs, 0, 120);
        Must.Lie(heightM, 0.1, 200);
        var factor = heightM == TargetM ? 1 : 4.87 / Math.Log((67.8 * heightM) - 5.42);
        return new(windMs * factor, HeightM.MarkOf(heightM));
    }
}
