namespace Closemown.Turf;

/// <summary>What was not read and had to be replaced.</summary>
[Flags]
public enum Substitutes
{
    /// <summary>All was read.</summary>
    None = 0,

    /// <summary>Radiation from hours of sunshine (FAO-56 eq. 35).</summary>
    RadiationFromSunshine = 1,

    /// <summary>Radiation from the day's span of temperature (eq. 50).</summary>
    RadiationFromTemperature = 2,

    /// <summary>Humidity from the day's mean (eq. 19).</summary>
    HumidityFromMean = 4,

    /// <summary>Humidity from the lowest temperature (eq. 48).</summary>
    HumidityFromTemperature = 8,

    /// <summary>Wind of 2 m/s.</summary>
    Wind = 16,
}
