namespace Closemown.Turf;

/// <summary>The share p of the available water that may go before turf feels it, 0 to 1.</summary>
/// <remarks>
/// FAO-56 table 22: 0.40 cool-season, 0.50 warm-season, at 5 mm a day; its note moves it by the day's demand, p + 0.04·(5 − ETc), kept in 0.1 to 0.8 (the note's
/// formula from memory). Source: Allen, Pereira, Raes &amp; Smith 1998, FAO Irrigation and Drainage Paper 56.
/// </remarks>
public static class DepletionFraction
{
    /// <summary>The demand the table stands for, mm a day.</summary>
    public const double TableEtMm = 5;

    /// <summary>What the note keeps it in.</summary>
    public const double Least = 0.1, Most = 0.8;

    private const double PerMm = 0.04;

    /// <summary>p of the table.</summary>
    /// <param name="grass">Kind of grass.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such grass.</exception>
    public static double OfTable(TurfGrass grass) => grass switch
    {
        TurfGrass.Cool => 0.40,
        TurfGrass.Warm => 0.50,
        _ => throw new ArgumentOutOfRangeException(nameof(grass), grass, "No such grass."),
    };

    /// <summary>p for the day's demand, 0.1 to 0.8: less in a dry wind, more on a dull day.</summary>
    /// <example>0.40 at 2.5 mm a day: 0.50.</example>
    /// <param name="ofTable">p of the table, 0 to 1.</param>
    /// <param name="etMm">The turf's demand ETc, mm a day, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static double Adjusted(double ofTable, double etMm)
    {
        Must.Lie(ofTable, 0, 1);
        Must.NotBeNegative(etMm);
        return Math.Clamp(ofTable + (PerMm * (TableEtMm - etMm)), Least, Most);
    }
}
