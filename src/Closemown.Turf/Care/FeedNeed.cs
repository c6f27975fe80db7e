namespace Closemown.Turf;

/// <summary>Nitrogen that growth asks for in the coming month, and what was given in the last.</summary>
/// <param name="LowGm2">For a month, g/m², at a modest maximum.</param>
/// <param name="HighGm2">The same at a full one.</param>
/// <param name="GivenGm2">Given in the last 30 days, g/m².</param>
/// <param name="AtWorkGm2">Still at work by our reckoning, g/m².</param>
public sealed record FeedNeed(double LowGm2, double HighGm2, double GivenGm2, double AtWorkGm2)
{
    /// <summary>Monthly maximum of close-mown greens, g/m² (3 to 4 are told of bentgrass greens, from memory; others lower: common practice, no source).</summary>
    public const double LowMaximumGm2 = 2.5, HighMaximumGm2 = 4;

    private const int Month = 30;

    /// <summary>Looks a month ahead.</summary>
    /// <param name="days">The area's days.</param>
    /// <param name="today">The day it is asked.</param>
    /// <param name="givenGm2">Nitrogen given in the last 30 days, g/m².</param>
    public static FeedNeed Of(TurfDays days, DateOnly today, double givenGm2)
    {
        ArgumentNullException.ThrowIfNull(days);
        var mean = Enumerable.Range(1, Month).Average(k => days.On(today.AddDays(k)).Weather.MeanC);
        double Of(double maximum) => NitrogenByGrowth.MonthGm2(maximum, mean, days.Area.Grass);
        return new(Of(LowMaximumGm2), Of(HighMaximumGm2), givenGm2, days.On(today).NitrogenGm2);
    }
}
