namespace Closemown.Turf;

/// <summary>Heights of cut that were published or are usual for a grass or a surface.</summary>
/// <param name="What">The grass or surface.</param>
/// <param name="LowMm">The lowest, mm.</param>
/// <param name="HighMm">The highest, mm; the lowest again where only that is given.</param>
/// <param name="Source">Where it stands; or common practice, no source.</param>
public sealed record MowingHeight(string What, double LowMm, double HighMm, string Source);

/// <summary>The heights that were found, to compare a wish with. They differ by place and care: none is a limit.</summary>
public static class MowingHeights
{
    private const double InchMm = 25.4;
    private const string Maryland = "Maryland golf course best management practices, table of mowing heights", Practice = "common practice, no source";

    /// <summary>Lowest height of a green under healthy care.</summary>
    public static MowingHeight CreepingBentgrassGreen { get; } = new("creeping bentgrass, green", 0.125 * InchMm, 0.125 * InchMm, Maryland);

    /// <summary>Lowest height of a green under healthy care.</summary>
    public static MowingHeight HybridBermudagrassGreen { get; } = new("hybrid bermudagrass, green", 0.125 * InchMm, 0.125 * InchMm, Maryland);

    /// <summary>Lowest height of a tee.</summary>
    public static MowingHeight ZoysiagrassTee { get; } = new("zoysiagrass, tee", 0.400 * InchMm, 0.400 * InchMm, Maryland);

    /// <summary>Lowest height of a tee.</summary>
    public static MowingHeight PerennialRyegrassTee { get; } = new("perennial ryegrass, tee", 0.375 * InchMm, 0.375 * InchMm, Maryland);

    /// <summary>Range of mowing.</summary>
    public static MowingHeight CreepingBentgrass { get; } = new("creeping bentgrass", 0.1 * InchMm, 0.25 * InchMm, "Sorochan 2014");

    /// <summary>Heights of greens and tennis courts in trials.</summary>
    public static MowingHeight FineFescues { get; } = new("fine fescues", 4, 9.4, "Aamlid & Molteberg 2011, Aamlid et al. 2012, Horgan et al. 2012, Newell et al. 1996, as summed up in a later review");

    /// <summary>Heights compared on greens: anthracnose was worst at the lowest, least at the highest.</summary>
    public static MowingHeight AnnualBluegrassGreen { get; } = new("annual bluegrass, green", 2.8, 3.6, "Inguagiato, Murphy & Clarke 2009, Crop Sci. 49:1454");

    /// <summary>Lowest height in season.</summary>
    public static MowingHeight BowlingGreen { get; } = new("bowls, red fescue", 5, 5, Practice);

    /// <summary>Height in season.</summary>
    public static MowingHeight CroquetLawn { get; } = new("croquet", 5, 5, Practice);

    /// <summary>All there are.</summary>
    public static IReadOnlyList<MowingHeight> All { get; } =
    [
        CreepingBentgrassGreen, HybridBermudagrassGreen, ZoysiagrassTee, PerennialRyegrassTee, CreepingBentgrass, FineFescues, AnnualBluegrassGreen, BowlingGreen, CroquetLawn,
    ];
}
