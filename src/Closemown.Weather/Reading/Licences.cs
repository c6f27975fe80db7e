namespace Closemown.Weather;

/// <summary>Whose data it is, where a licence wants that said.</summary>
public static class Licences
{
    /// <summary>For what comes from Open-Meteo.</summary>
    public const string OpenMeteo = "Weather data by Open-Meteo.com, licence CC BY 4.0.";
}
