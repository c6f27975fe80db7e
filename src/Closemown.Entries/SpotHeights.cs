namespace Closemown.Entries;

/// <summary>A standing height as it was read: a value, or limits where it was read coarsely.</summary>
/// <param name="LowMm">The value, or the low limit; −infinity for none.</param>
/// <param name="HighMm">The value again, or the high limit; infinity for none.</param>
/// <param name="SdMm">Its scatter, mm.</param>
public readonly record struct SpotHeight(double LowMm, double HighMm, double SdMm);

/// <summary>What a <c>canopy</c> entry says: spots read finely as their mean, coarse ones as limits.</summary>
public static class SpotHeights
{
    private static readonly double[] Steps = [1, 0.5, 0.25, 0.1];

    /// <summary>Scatter of a standing height, a spot, by prism or ruler (prisms and rulers alike), besides its rounding; by card or photo more. Mm; common practice or assumption, no source.</summary>
    public static IReadOnlyDictionary<string, double> SdMm { get; } = new Dictionary<string, double>
    {
        ["prism"] = 0.3,
        ["ruler"] = 0.3,
        ["card"] = 0.45,
        ["photo"] = 0.6,
    };

    /// <summary>The readings of an entry.</summary>
    /// <param name="e">A <c>canopy</c> entry.</param>
    public static IReadOnlyList<SpotHeight> Of(Entry e)
    {
        ArgumentNullException.ThrowIfNull(e);
        var sd = SdMm[e[CanopyEntry.How] ?? "ruler"];
        if (e[CanopyEntry.Mm] is not { Count: > 0 } spots)
        {
            double low = e[CanopyEntry.LowMm] ?? double.NegativeInfinity, high = e[CanopyEntry.HighMm] ?? double.PositiveInfinity;
            return low <= high ? [new(low, high, sd)] : [];
        }
        var rounding = e[CanopyEntry.StepMm] ?? RoundedTo(spots);
        // Rounding well below the scatter only widens it (Sheppard 1898, from memory: the variance of a rounded value is step²/12 more); a coarse card keeps its interval.
        if (rounding <= sd) return [new(spots.Average(), spots.Average(), Math.Sqrt(((sd * sd) + (rounding * rounding / 12)) / spots.Count))];
        return [.. spots.Select(mm => new SpotHeight(mm - (rounding / 2), mm + (rounding / 2), sd))];
    }

    /// <summary>The coarsest step that all the numbers are multiples of, mm; 0 where none of the usual ones fits.</summary>
    private static double RoundedTo(IReadOnlyList<double> spots)
    {
        foreach (var step in Steps)
        {
            if (spots.All(mm => Math.Abs((mm / step) - Math.Round(mm / step)) < 1e-6)) return step;
        }
        return 0;
    }
}
