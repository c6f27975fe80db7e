using Closemown.Estimation;

namespace Closemown.Steel;

/// <summary>How much setting or reading the height moves the nip of this unit: a spread that starts from an assumption and follows what the checks after each setting showed.</summary>
/// <remarks>
/// A gauge hooked on the bedknife can pull it, and the nuts stand near it (common practice, no source). With the spread σ in force an end stands, before the checks,
/// at mean m₁ and variance P₁ = P₀ + σ², after them at m₂ and P₂. The shift is then expected at K(m₂ − m₁), K = σ²/P₁, and of its variance the
/// share w = K²(P₁ − P₂)/σ² is told (Gaussian smoothing). The spread is σ² = (ν·σ₀² + Σ shift²)/(ν + Σ w): where checks tell nothing, nothing is learned.
/// </remarks>
internal sealed class HeightDisturbance(double startUm)
{
    /// <summary>How many settings of one end the starting value counts for: an assumption.</summary>
    private const double Counts = 6;

    private double squares = Counts * startUm * startUm;
    private double weight = Counts;
    private (double Mean, double Variance, double Sd)[]? open;

    /// <summary>The spread that a height setting adds to the clearance of each end, µm.</summary>
    public double SdUm => Math.Sqrt(squares / weight);

    /// <summary>Whether a setting waits for a check.</summary>
    public bool Waits => open is not null;

    /// <summary>A setting begins.</summary>
    /// <param name="after">The belief after its noise.</param>
    /// <param name="sdUm">That noise, each end, µm.</param>
    public void Set(GaussianState after, double sdUm) => open = [At(after, 0, sdUm), At(after, 1, sdUm)];

    /// <summary>Something else is done, or the sitting ends: what the checks since have shown is counted.</summary>
    /// <param name="now">The belief before that.</param>
    public void Close(GaussianState now)
    {
        if (open is null) return;
        for (var side = 0; side < 2; side++)
        {
            var (before, after) = (open[side], At(now, side, 0));
            var gain = before.Sd * before.Sd / before.Variance;
            var shift = gain * (after.Mean - before.Mean);
            var told = Math.Clamp(gain * gain * (before.Variance - after.Variance) / (before.Sd * before.Sd), 0, 1);
            if (told <= 0) continue;
            squares += shift * shift;
            weight += told;
        }
        open = null;
    }

    private static (double Mean, double Variance, double Sd) At(GaussianState g, int side, double sd)
    {
        var size = g.StateSize + g.ConstantCount;
        return (g.Mean[side], g.Covariance[(side * size) + side], sd);
    }
}
