namespace Closemown.Bench.Green;

/// <summary>Growth by warmth along a broken line that shifts with the warmth the grass has got used to, cut off by heat.</summary>
/// <remarks>
/// Taken at night, at the day's mean and at its height, so that a wide day is not the same as an even one. Assumptions.
/// </remarks>
internal readonly record struct OtherWarmth(double UsedC)
{
    private const double UsedDays = 20, DegreesFromC = 4, Off = 34;

    /// <summary>Share of the best growth, 0 to 1.</summary>
    public double Share(SkyDay s) => (At(s.TMinC) + At(s.MeanC) + At(s.TMaxC)) / 3;

    public OtherWarmth After(SkyDay s) => new(UsedC + ((s.MeanC - UsedC) / UsedDays));

    /// <summary>Degree-days of a day, the clock of leaves.</summary>
    public static double Degrees(SkyDay s) => Math.Max(0, s.MeanC - DegreesFromC);

    private double At(double c)
    {
        var used = Math.Clamp(UsedC, 0, 22);
        var (low, best, high) = (2 + (0.15 * used), 14 + (0.25 * used), 24 + (0.2 * used));
        if (c <= low || c >= Off) return 0;
        return c < best ? (c - low) / (best - low) : c <= high ? 1 : (Off - c) / (Off - high);
    }
}
