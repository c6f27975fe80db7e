namespace Closemown.Turf;

/// <summary>When and how much to water, from the water in the root zone and the days ahead.</summary>
/// <param name="On">The day by whose end the turf would begin to feel it; null where none comes within the days looked at.</param>
/// <param name="Mm">What brings the root zone back to full then, mm, before losses.</param>
/// <param name="DepletionMm">Water missing now, mm.</param>
/// <param name="ReadyMm">What may be missing before the turf feels it, mm.</param>
/// <param name="RainMm">Rain expected until then, mm.</param>
public sealed record WaterNeed(DateOnly? On, double Mm, double DepletionMm, double ReadyMm, double RainMm)
{
    /// <summary>Days looked at.</summary>
    public const int Days = 10;

    /// <summary>Looks ahead from a day.</summary>
    /// <remarks>FAO-56: water is due when the depletion passes the readily available water (eq. 83, 85). Rain ahead counts as forecast, else as usual. Allen, Pereira, Raes &amp; Smith 1998.</remarks>
    /// <param name="days">The area's days.</param>
    /// <param name="today">The day it is asked.</param>
    public static WaterNeed Of(TurfDays days, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(days);
        var (roots, kc, ofTable) = (days.Area.Roots, TurfCoefficient.Kc(days.Area.Grass, SeasonPart.Middle), DepletionFraction.OfTable(days.Area.Grass));
        double Ready(TurfDay d) => roots.ReadyMm(DepletionFraction.Adjusted(ofTable, kc * d.Et0Mm));
        var now = days.On(today);
        var rain = 0.0;
        for (var k = 0; k <= Days; k++)
        {
            var day = days.On(today.AddDays(k));
            if (k > 0) rain += day.Weather.RainMm;
            if (day.DepletionMm > Ready(day)) return new(day.Date, day.DepletionMm, now.DepletionMm, Ready(now), rain);
        }
        return new(null, 0, now.DepletionMm, Ready(now), rain);
    }

    /// <summary>What must be given so that the drier quarter of the turf gets it too, mm.</summary>
    /// <param name="lowQuarter">Lower-quarter uniformity of the watering, above 0 to 1.</param>
    public double GrossMm(double lowQuarter)
    {
        Must.Lie(lowQuarter, 0.05, 1);
        return Mm / lowQuarter;
    }
}
