namespace Closemown.Turf;

/// <summary>One day's weather as far as it was read. What is null was not read and is replaced by the paper's substitute.</summary>
public sealed record ReferenceWeather
{
    /// <summary>Lowest temperature, °C, −100 to 100.</summary>
    public required double TMinC { get; init; }

    /// <summary>Highest temperature, °C, not below the lowest.</summary>
    public required double TMaxC { get; init; }

    /// <summary>Latitude, °, −90 to 90, north positive.</summary>
    public required double LatitudeDeg { get; init; }

    /// <summary>Day of the year, 1 to 366.</summary>
    public required int DayOfYear { get; init; }

    /// <summary>Height above the sea, m, −500 to 9000.</summary>
    public double AltitudeM { get; init; }

    /// <summary>Mean dew point, °C, not above the day's highest temperature. Goes before every humidity.</summary>
    public double? DewC { get; init; }

    /// <summary>Lowest relative humidity, %, 0 to 100; counts only with <see cref="RhMaxPct"/>.</summary>
    public double? RhMinPct { get; init; }

    /// <summary>Highest relative humidity, %, 0 to 100.</summary>
    public double? RhMaxPct { get; init; }

    /// <summary>Mean relative humidity, %, 0 to 100.</summary>
    public double? RhMeanPct { get; init; }

    /// <summary>Wind, m/s, 0 to 120, at <see cref="WindHeightM"/>.</summary>
    public double? WindMs { get; init; }

    /// <summary>Height the wind was read at, m, 0.1 to 200.</summary>
    public double WindHeightM { get; init; } = 2;

    /// <summary>Sunshine, h, 0 to 24.</summary>
    public double? SunH { get; init; }

    /// <summary>Solar radiation, MJ/m² a day, 0 to 60. Goes before sunshine.</summary>
    public double? RadiationMjM2 { get; init; }

    /// <summary>Whether the sea rules the air here: matters only where radiation comes from temperature.</summary>
    public bool Coast { get; init; }

    /// <summary>Heat into the soil, MJ/m² a day; 0 over a day.</summary>
    public double SoilHeatMjM2 { get; init; } = SoilHeatFlux.DayMjM2;
}
