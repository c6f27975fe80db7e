using Closemown.Estimation;

namespace Closemown.Turf;

/// <summary>How probable it is that the grass freezes in a night.</summary>
/// <remarks>
/// The grass cools 1 to 4 °C below the air, by the sky (<see cref="FrostRisk"/>: common practice, no source); the sky is not known, so both are given a half. How far the night's least
/// temperature may lie off: a reading 0.7 °C, a forecast 1.5 °C and 0.25 more each day ahead, a night nobody has forecast its usual spread. Assumptions.
/// </remarks>
public static class FrostOutlook
{
    /// <summary>Nights of the outlook.</summary>
    public const int Nights = 10;

    /// <summary>From this probability on a night is named.</summary>
    public const double NamedFrom = 0.3;

    private const double ReadSdC = 0.7, ForecastSdC = 1.5, AheadSdC = 0.25, Half = 0.5;

    /// <summary>The probability for the night that ends on a day's morning.</summary>
    /// <param name="day">The day.</param>
    /// <param name="ahead">How many days ahead of what is known, 0 or more.</param>
    /// <param name="usual">What is usual then.</param>
    public static double Probability(TurfDay day, int ahead, UsualDay usual)
    {
        ArgumentNullException.ThrowIfNull(day);
        var sd = day.Weather.Known ? ReadSdC : day.Weather.Read is not null ? ForecastSdC + (AheadSdC * ahead) : usual.SdC;
        double Below(double dropC) => NormalMath.Phi((dropC - day.Weather.TMinC) / sd);
        return (Half * Below(FrostRisk.ClearDropC)) + (Half * Below(FrostRisk.CloudyDropC));
    }
}
