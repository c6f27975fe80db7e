namespace Closemown.Turf;

/// <summary>Part of the season, as FAO-56 divides it.</summary>
public enum SeasonPart
{
    /// <summary>Green-up.</summary>
    Initial,

    /// <summary>Full growth.</summary>
    Middle,

    /// <summary>End of the season.</summary>
    End,
}

/// <summary>What turf evaporates, over the reference: Kc, a pure number.</summary>
/// <remarks>
/// FAO-56 table 12. It stands for turf as commonly mown, up to about 10 cm; the paper gives no value for turf of 3 to 8 mm, so every use on it is beyond the
/// table: learn the place's own from how fast it dries. Source: Allen, Pereira, Raes &amp; Smith 1998, FAO Irrigation and Drainage Paper 56.
/// </remarks>
public static class TurfCoefficient
{
    /// <summary>Kc of the table.</summary>
    /// <param name="grass">Kind of grass.</param>
    /// <param name="part">Part of the season.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such grass or part.</exception>
    public static double Kc(TurfGrass grass, SeasonPart part) => (grass, part) switch
    {
        (TurfGrass.Cool, SeasonPart.Initial) => 0.90,
        (TurfGrass.Cool, SeasonPart.Middle or SeasonPart.End) => 0.95,
        (TurfGrass.Warm, SeasonPart.Initial) => 0.80,
        (TurfGrass.Warm, SeasonPart.Middle or SeasonPart.End) => 0.85,
        _ => throw new ArgumentOutOfRangeException(nameof(grass), $"{grass}, {part}", "No such grass or part of the season."),
    };
}
