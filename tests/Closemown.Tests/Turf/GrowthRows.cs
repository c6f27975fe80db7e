using Closemown.Turf;

namespace Closemown.Tests.Turf;

internal static class GrowthRows
{
    private const double FahrenheitPerCelsius = 9.0 / 5;

    public static IReadOnlyList<(string, Reckoner)> All { get; } =
    [
        ("gdd-8650-", r => [FahrenheitPerCelsius * DegreeDays.Capped(Celsius(r["Tmin"]), Celsius(r["Tmax"]), Celsius(50), Celsius(86))]),
        ("gdd-method1", r => [DegreeDays.Mean(r["Tmin"], r["Tmax"], r["base"])]),
        ("gdd-method2", r => [DegreeDays.Capped(r["Tmin"], r["Tmax"], r["base"])]),
        ("gdd-sine-pub", r => [DegreeDays.Sine(r["Tmin"], r["Tmax"], r["base"])]),
        ("gdd-sine-upper", r => [DegreeDays.Sine(r["Tmin"], r["Tmax"], r["base"], r["upper"])]),
        ("gdd-tri-pub", r => [DegreeDays.Triangle(r["Tmin"], r["Tmax"], r["base"])]),
        ("pgr-200", r => [GrowthRegulator.CreepingBentgrass.BaseC == r["base"] ? GrowthRegulator.CreepingBentgrass.ThresholdCDays : double.NaN]),
        ("pgr-200-f", FahrenheitSum),
        ("pgr-bermuda", r => [GrowthRegulator.UltradwarfBermudagrass.BaseC == r["base"] ? GrowthRegulator.UltradwarfBermudagrass.ThresholdCDays : double.NaN]),
        ("pgr-days", DaysUntilDue),
        ("gp-c3-", r => [GrowthPotential.Of(r["T"], TurfGrass.Cool)]),
        ("gp-c4-", r => [GrowthPotential.Of(r["T"], TurfGrass.Warm)]),
        ("gp-cross", _ => [Root(t => GrowthPotential.Of(t, TurfGrass.Cool) - GrowthPotential.Of(t, TurfGrass.Warm), 20, 31)]),
        ("gp-90", _ => [Root(d => GrowthPotential.Of(20 + d, TurfGrass.Cool) - 0.9, 0, 10)]),
        ("growth-vwc", r => [SoilWaterGrowth.Share(r["VWC"] / 100, r["WP"] / 100, r["FC"] / 100)]),
    ];

    private static double Celsius(double fahrenheit) => (fahrenheit - 32) / FahrenheitPerCelsius;

    /// <summary>The sum in °F above 32 on the day the clock of days of 20 °C (68 °F) runs out: a sum of differences takes no 32.</summary>
    private static double[] FahrenheitSum(CheckRow r)
    {
        double celsius = 0, fahrenheit = 0;
        for (var due = false; !due;)
        {
            (celsius, due) = GrowthRegulator.CreepingBentgrass.After(celsius, 20, 20);
            fahrenheit += DegreeDays.Mean(68, 68, 32);
        }
        return [celsius == r["threshold"] ? fahrenheit : double.NaN];
    }

    private static double[] DaysUntilDue(CheckRow r)
    {
        var days = 0;
        double sum = 0;
        foreach (var mean in r.List("daily mean"))
        {
            days++;
            (sum, var due) = GrowthRegulator.CreepingBentgrass.After(sum, mean, mean);
            if (due) break;
        }
        return [days];
    }

    /// <summary>Where a falling function crosses 0.</summary>
    private static double Root(Func<double, double> f, double low, double high)
    {
        for (var i = 0; i < 100; i++)
        {
            var middle = (low + high) / 2;
            if (f(middle) > 0) low = middle;
            else high = middle;
        }
        return low;
    }
}
