namespace Closemown.Weather;

/// <summary>Whose data it is, where a licence wants that said.</summary>
public static class Licences
{
    /// <summary>For what comes from Open-Meteo.</summary>
    public const string OpenMeteo = "Weather data by Open-Meteo.com, licence CC BY 4.0.";

    /// <summary>For what comes from the German weather service; the licence from memory.</summary>
    public const string Dwd = "Weather data by Deutscher Wetterdienst (DWD), licence CC BY 4.0.";

    /// <summary>For what comes from MIDAS Open.</summary>
    public const string Midas = "Weather data by Met Office, MIDAS Open: contains public sector information licensed under the Open Government Licence v3.0.";
}
