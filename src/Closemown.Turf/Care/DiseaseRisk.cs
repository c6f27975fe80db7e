namespace Closemown.Turf;

/// <summary>Dollar-spot probability of the last five days, where their humidity was read: information, no advice to treat.</summary>
public static class DiseaseRisk
{
    /// <summary>The probability; null where a day's temperature or humidity was not read.</summary>
    /// <param name="days">The area's days.</param>
    /// <param name="today">The last of the five days.</param>
    public static Ranged? DollarSpotOf(TurfDays days, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(days);
        double warmth = 0, humidity = 0;
        for (var k = 0; k < DollarSpot.Days; k++)
        {
            var read = days.Record.On(today.AddDays(-k));
            if (read?.MeanC is not { } mean || (read.RhPct ?? (read.RhMinPct + read.RhMaxPct) / 2) is not { } rh) return null;
            (warmth, humidity) = (warmth + mean, humidity + rh);
        }
        return DollarSpot.Probability(warmth / DollarSpot.Days, humidity / DollarSpot.Days);
    }
}
