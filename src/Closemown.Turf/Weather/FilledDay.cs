namespace Closemown.Turf;

/// <summary>A day's weather without gaps: as recorded or forecast, else as usual.</summary>
/// <param name="TMinC">Least temperature, °C.</param>
/// <param name="TMaxC">Greatest temperature, °C.</param>
/// <param name="MeanC">Mean temperature, °C.</param>
/// <param name="RainMm">Rain, mm.</param>
/// <param name="Read">The day as read, for what only readings tell (humidity, wind, sun); null where there is none.</param>
/// <param name="Known">Whether its warmth was recorded.</param>
/// <param name="RainKnown">Whether its rain was recorded.</param>
public readonly record struct FilledDay(double TMinC, double TMaxC, double MeanC, double RainMm, DayWeather? Read, bool Known, bool RainKnown)
{
    /// <summary>Fills what a day lacks with what is usual.</summary>
    /// <param name="read">The day as read; null where nothing was.</param>
    /// <param name="usual">What is usual then.</param>
    public static FilledDay Of(DayWeather? read, UsualDay usual)
    {
        var mean = read?.MeanC ?? read?.TMinC + (usual.RangeC / 2) ?? read?.TMaxC - (usual.RangeC / 2) ?? usual.MeanC;
        var low = Math.Min(read?.TMinC ?? mean - (usual.RangeC / 2), mean);
        var high = Math.Max(read?.TMaxC ?? mean + (usual.RangeC / 2), mean);
        var warmthRead = (read?.TMinC ?? read?.TMaxC ?? read?.TMeanC) is not null;
        return new(low, high, mean, read?.RainMm ?? usual.RainMm, read, warmthRead && !read!.Forecast, read?.RainMm is not null && !read.Forecast);
    }
}
