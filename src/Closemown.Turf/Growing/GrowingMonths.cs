namespace Closemown.Turf;

/// <summary>The months in which turf grows enough to be lowered: by what the season usually brings, not by a mild week.</summary>
/// <remarks>
/// A day lies in them where the usual warmth of five weeks later still leaves a tenth of the best growth, by the published potential. So
/// nothing is lowered that would go into winter before it is used to it, and in a plain temperate year the last step down falls in early
/// October. That nothing is lowered in months without growth: common practice, no source; five weeks and a tenth: assumptions.
/// </remarks>
public static class GrowingMonths
{
    private const int LaterDays = 35;
    private const double LeastPotential = 0.1;

    /// <summary>Whether each of some days lies in them.</summary>
    /// <param name="days">The area's days: what is usual there.</param>
    /// <param name="first">The first day.</param>
    /// <param name="count">Days, 0 or more.</param>
    public static IReadOnlyList<bool> On(TurfDays days, DateOnly first, int count)
    {
        ArgumentNullException.ThrowIfNull(days);
        ArgumentOutOfRangeException.ThrowIfNegative(count);
        return [.. Enumerable.Range(LaterDays, count).Select(d => Usually(first.AddDays(d)) >= LeastPotential)];

        double Usually(DateOnly date) => GrowthPotential.Of(Math.Clamp(days.Usual.On(date).MeanC, -60, 60), days.Area.Grass);
    }
}
