namespace Closemown.Turf;

/// <summary>The weather of one civil day of an area, as far as it is known: the best value of each field over all sources.</summary>
/// <remarks>Null is not known, which is never the same as none: a day without a rain reading is no dry day.</remarks>
/// <param name="Date">The local civil day.</param>
public sealed record DayWeather(DateOnly Date)
{
    /// <summary>Least, greatest and mean air temperature, °C.</summary>
    public double? TMinC { get; init; }

    /// <inheritdoc cref="TMinC"/>
    public double? TMaxC { get; init; }

    /// <inheritdoc cref="TMinC"/>
    public double? TMeanC { get; init; }

    /// <summary>Relative humidity: mean, least and greatest, %.</summary>
    public double? RhPct { get; init; }

    /// <inheritdoc cref="RhPct"/>
    public double? RhMinPct { get; init; }

    /// <inheritdoc cref="RhPct"/>
    public double? RhMaxPct { get; init; }

    /// <summary>Dew point, °C.</summary>
    public double? DewC { get; init; }

    /// <summary>Rain, mm.</summary>
    public double? RainMm { get; init; }

    /// <summary>Mean wind, m/s, read at <see cref="WindHeightM"/>.</summary>
    public double? WindMs { get; init; }

    /// <summary>Height of the wind reading, m.</summary>
    public double WindHeightM { get; init; } = 2;

    /// <summary>Bright sunshine, h.</summary>
    public double? SunH { get; init; }

    /// <summary>Solar radiation, MJ/m².</summary>
    public double? RadMjM2 { get; init; }

    /// <summary>Whether the temperatures are a forecast, not a record.</summary>
    public bool Forecast { get; init; }

    /// <summary>The mean temperature: as read, else the middle of least and greatest, °C; null where neither is known.</summary>
    public double? MeanC => TMeanC ?? (TMinC + TMaxC) / 2;
}
