using Closemown.Turf;

namespace Closemown.Tests.Turf;

internal static class StationRows
{
    public static IReadOnlyList<(string, Reckoner)> All { get; } =
    [
        ("sta-days", _ => [1 + StationDay.Year.Zip(StationDay.Year.Skip(1)).Count(p => p.Second.Date == p.First.Date.AddDays(1))]),
        ("sta-rain", _ => [WaterLeftTheZone()]),
        ("sta-gdd0", _ => [StationDay.Year.Sum(d => DegreeDays.Mean(d.TMinC, d.TMaxC, 0))]),
        ("sta-gdd10-1", _ => [StationDay.Year.Sum(d => DegreeDays.Mean(d.TMinC, d.TMaxC, 10))]),
        ("sta-gdd10-2", _ => [StationDay.Year.Sum(d => DegreeDays.Capped(d.TMinC, d.TMaxC, 10))]),
        ("sta-gdd10-s", _ => [StationDay.Year.Sum(d => DegreeDays.Sine(d.TMinC, d.TMaxC, 10))]),
        ("sta-gp", _ => [StationDay.Year.Average(d => GrowthPotential.Of(d.MeanC, TurfGrass.Cool))]),
        ("sta-gp-july-mean", _ => [GrowthPotential.Of(StationDay.July.Average(d => d.MeanC), TurfGrass.Cool)]),
        ("sta-gp-july-days", _ => [StationDay.July.Average(d => GrowthPotential.Of(d.MeanC, TurfGrass.Cool))]),
        ("sta-harg-july", r => [StationDay.July.Sum(d => Hargreaves.Mm(d.TMinC, d.TMaxC, r["latitude"], d.Date.DayOfYear).Value)]),
        ("sta-regulator", r => [.. RegulatorDates(r["threshold"])]),
    ];

    /// <summary>The year's rain, found again as what a root zone gave off, let through and gained.</summary>
    private static double WaterLeftTheZone()
    {
        const double totalMm = 14.4, start = 5;
        double depletion = start, left = 0;
        foreach (var d in StationDay.Year)
        {
            var after = WaterBalance.Day(totalMm, 0.4, depletion, Hargreaves.Mm(d.TMinC, d.TMaxC, 47.45, d.Date.DayOfYear).Value, d.RainMm);
            left += after.EvaporatedMm + after.DrainedMm;
            depletion = after.DepletionMm;
        }
        return left + (start - depletion);
    }

    private static IEnumerable<double> RegulatorDates(double threshold)
    {
        var clock = new GrowthRegulator(0, threshold);
        double sum = 0;
        foreach (var d in StationDay.Year)
        {
            (sum, var due) = clock.After(sum, d.TMinC, d.TMaxC);
            if (!due) continue;
            yield return d.Date.DayNumber;
            sum = 0;
        }
    }
}
