namespace Closemown.Turf;

/// <summary>How evenly irrigation falls, from cans set out on the turf; all the same, in the same unit.</summary>
/// <remarks>
/// DUlq = mean of the lowest quarter / mean; CU = 1 − mean |x − mean| / mean (Christiansen 1942). Zoldoske, Solomon &amp; Norum 1994. Both hold by definition. Where a quarter of
/// the cans is no whole number it is rounded down, one at least.
/// </remarks>
public static class CatchCans
{
    /// <summary>Fewer than this have no quarter.</summary>
    public const int Fewest = 4;

    private const double NormalSlope = 0.63;

    /// <summary>Whether an evenness can be told from these: four or more, none below 0, not all empty.</summary>
    /// <param name="cans">What each can caught.</param>
    public static bool Tell(IReadOnlyList<double> cans)
    {
        ArgumentNullException.ThrowIfNull(cans);
        return cans.Count >= Fewest && cans.All(c => c >= 0) && cans.Any(c => c > 0);
    }

    /// <summary>Lower-quarter distribution uniformity, 0 to 1.</summary>
    /// <param name="cans">What each can caught, mm or mL, 0 or more, four at least, not all empty.</param>
    /// <exception cref="ArgumentException">Fewer than four, one below 0, or all empty.</exception>
    public static double LowQuarter(IReadOnlyList<double> cans)
    {
        var mean = Mean(cans);
        return cans.Order().Take(cans.Count / Fewest).Average() / mean;
    }

    /// <summary>Christiansen's coefficient of uniformity; 1 where all are alike, below 0 where a few catch all.</summary>
    /// <param name="cans">What each can caught, mm or mL, 0 or more, four at least, not all empty.</param>
    /// <exception cref="ArgumentException">Fewer than four, one below 0, or all empty.</exception>
    public static double Christiansen(IReadOnlyList<double> cans)
    {
        var mean = Mean(cans);
        return 1 - (cans.Average(x => Math.Abs(x - mean)) / mean);
    }

    /// <summary>CU expected of a DU where the catch is normally spread: CU = 1 − 0.63·(1 − DU). Keller &amp; Bliesner 1990 (from memory).</summary>
    /// <param name="lowQuarter">DU, 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static double ChristiansenOf(double lowQuarter)
    {
        Must.Lie(lowQuarter, 0, 1);
        return 1 - (NormalSlope * (1 - lowQuarter));
    }

    private static double Mean(IReadOnlyList<double> cans)
    {
        ArgumentNullException.ThrowIfNull(cans);
        if (cans.Count < Fewest) throw new ArgumentException($"{cans.Count} cans: at least {Fewest} are needed.", nameof(cans));
        foreach (var x in cans) Must.NotBeNegative(x, nameof(cans));
        var mean = cans.Average();
        return mean > 0 ? mean : throw new ArgumentException("All cans are empty.", nameof(cans));
    }
}
