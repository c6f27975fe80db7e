namespace Closemown.Weather;

/// <summary>Units as weather files write them, and how they turn into those of an entry.</summary>
internal static class WeatherUnits
{
    private const double InchMm = 25.4, MileM = 1609.344, KnotM = 1852, HourS = 3600;

    /// <summary>How a number of a unit becomes the entry's; null where the unit is none of that measure.</summary>
    public static Func<double, double>? To(Measure measure, string unit)
    {
        var u = unit.Trim().Trim('(', ')', '[', ']').Replace("°", "", StringComparison.Ordinal).Replace("²", "2", StringComparison.Ordinal).Replace(" ", "", StringComparison.Ordinal).ToLowerInvariant();
        return (measure, u) switch
        {
            (Measure.Temperature, "c" or "degc" or "celsius") => x => x,
            (Measure.Temperature, "f" or "degf" or "fahrenheit") => x => (x - 32) * 5 / 9,
            (Measure.Temperature, "k" or "kelvin") => x => x - 273.15,
            (Measure.Temperature, "c/10" or "tenthsc" or "0.1c") => x => x / 10,
            (Measure.Share, "%" or "percent" or "pct") => x => x,
            (Measure.Depth, "mm" or "l/m2" or "kg/m2") => x => x,
            (Measure.Depth, "cm") => x => x * 10,
            (Measure.Depth, "in" or "inch" or "inches" or "\"") => x => x * InchMm,
            (Measure.Depth, "mm/10" or "0.1mm") => x => x / 10,
            (Measure.Speed, "m/s" or "ms" or "mps" or "ms-1") => x => x,
            (Measure.Speed, "km/h" or "kmh" or "kph" or "kmph") => x => x * 1000 / HourS,
            (Measure.Speed, "mph" or "mi/h" or "mp/h") => x => x * MileM / HourS,
            (Measure.Speed, "kn" or "kt" or "kts" or "knots") => x => x * KnotM / HourS,
            (Measure.Height, "m") => x => x,
            (Measure.Height, "ft") => x => x * 0.3048,
            (Measure.Duration, "h" or "hr" or "hours") => x => x,
            (Measure.Duration, "min" or "minutes") => x => x / 60,
            (Measure.Duration, "s" or "sec" or "seconds") => x => x / HourS,
            (Measure.Energy, "mj/m2" or "mjm2" or "mjm-2") => x => x,
            (Measure.Energy, "wh/m2") => x => x * HourS / 1e6,
            (Measure.Energy, "kwh/m2") => x => x * 3.6,
            (Measure.Energy, "j/cm2") => x => x / 100,
            // A mean power over the day.
            (Measure.Energy, "w/m2") => x => x * 0.0864,
            _ => null,
        };
    }

    /// <summary>The units of a measure, for a message.</summary>
    public static string Of(Measure measure) => measure switch
    {
        Measure.Temperature => "C, F or K",
        Measure.Share => "%",
        Measure.Depth => "mm, cm or in",
        Measure.Speed => "m/s, km/h, mph or kn",
        Measure.Height => "m or ft",
        Measure.Duration => "h, min or s",
        _ => "MJ/m2, Wh/m2, kWh/m2, J/cm2 or W/m2",
    };
}
