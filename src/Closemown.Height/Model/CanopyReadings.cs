using Closemown.Entries;
using Closemown.Estimation;

namespace Closemown.Height;

/// <summary>Standing heights after mowing as readings of the height cut.</summary>
internal static class CanopyReadings
{
    private static readonly double[] Steps = [1, 0.5, 0.25, 0.1];

    /// <summary>The readings of an entry: spots read finely as their mean, coarse ones as intervals.</summary>
    /// <param name="e">A <c>canopy</c> entry.</param>
    /// <param name="cut">Terms of the height cut.</param>
    public static List<HeightReading> Of(Entry e, Term[] cut)
    {
        var how = e.Word("how") ?? "ruler";
        var sd = HeightDefaults.CanopySdMm[how];
        if (e.Numbers("mm") is not { Count: > 0 } spots)
        {
            double low = e.Number("lowMm") ?? double.NegativeInfinity, high = e.Number("highMm") ?? double.PositiveInfinity;
            return low < high ? [new(cut, low, high, sd, -1, -1)] : low == high ? [new(cut, low, low, sd, -1, -1)] : [];
        }
        var rounding = e.Number("stepMm") ?? RoundedTo(spots);
        // Rounding well below the scatter only widens it (Sheppard 1898, from memory: the variance of a rounded value is step²/12 more); a coarse card keeps its interval.
        if (rounding <= sd) return [new(cut, spots.Average(), spots.Average(), Math.Sqrt(((sd * sd) + (rounding * rounding / 12)) / spots.Count), -1, -1)];
        return [.. spots.Select(mm => new HeightReading(cut, mm - (rounding / 2), mm + (rounding / 2), sd, -1, -1))];
    }

    /// <summary>The coarsest step that all the numbers are multiples of, mm; 0 where none of the usual ones fits.</summary>
    internal static double RoundedTo(IReadOnlyList<double> spots)
    {
        foreach (var step in Steps)
        {
            if (spots.All(mm => Math.Abs((mm / step) - Math.Round(mm / step)) < 1e-6)) return step;
        }
        return 0;
    }
}
