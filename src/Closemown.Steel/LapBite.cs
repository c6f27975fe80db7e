using Closemown.Estimation;

namespace Closemown.Steel;

/// <summary>How well a lap bites: fully where the pair stands close, little where it stands wide.</summary>
/// <remarks>Any simple falling form will do; this one is a normal distribution function of the gap. An assumption, no source.</remarks>
public static class LapBite
{
    private const double HalfAtUm = 24;
    private const double SpreadUm = 11;

    /// <summary>Share of the full bite at a gap, 0–1.</summary>
    public static double At(double gapUm) => NormalMath.Phi((HalfAtUm - gapUm) / SpreadUm);

    /// <summary>Mean share of the full bite where the gap is known with a spread.</summary>
    public static double Expected(double gapUm, double varianceUm2) =>
        NormalMath.Phi((HalfAtUm - gapUm) / Math.Sqrt((SpreadUm * SpreadUm) + Math.Max(0, varianceUm2)));

    /// <summary>Minutes at full bite that halve the bluntness above fresh: with relief, without, and unknown.</summary>
    public static double HalfLifeMinutes(bool? relief) => relief switch { true => 1.5, false => 5, null => 2 };

    /// <summary>Share of the bluntness above fresh that a lap leaves.</summary>
    public static double Leaves(double minutes, double bite, bool? relief) => Math.Pow(0.5, minutes * bite / HalfLifeMinutes(relief));
}
