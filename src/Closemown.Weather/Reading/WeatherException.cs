namespace Closemown.Weather;

/// <summary>Why a weather file, or an answer, cannot be read, and what to do.</summary>
public sealed class WeatherException(string message, string remedy) : Exception(message)
{
    public string Remedy { get; } = remedy;
}
