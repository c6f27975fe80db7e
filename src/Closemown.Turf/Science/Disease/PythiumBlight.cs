namespace Closemown.Turf;

/// <summary>Whether a day favours Pythium blight.</summary>
/// <remarks>
/// A highest temperature over 30 °C, then at least 14 hours of more than 90 % with the night above 20 °C: University of Kentucky extension, second Pythium model
/// (86 °F, 14 h, 68 °F); that it is Nutter, Cole &amp; Schein 1983, Plant Disease 67:1126, is from memory. A yes or no, so no range.
/// </remarks>
public static class PythiumBlight
{
    /// <summary>The day must be warmer than this, °C.</summary>
    public const double DayC = 30;

    /// <summary>The night must stay warmer than this, °C.</summary>
    public const double NightC = 20;

    /// <summary>Hours above <see cref="HumidPct"/> at least.</summary>
    public const double HumidH = 14;

    /// <summary>Humidity an hour must pass, %.</summary>
    public const double HumidPct = 90;

    /// <summary>Whether it does.</summary>
    /// <param name="tMinC">Lowest temperature of the night, °C, −100 to 100.</param>
    /// <param name="tMaxC">Highest of the day, °C, not below the lowest.</param>
    /// <param name="humidHours">Hours above 90 % that follow, 0 to 24.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static bool Favoured(double tMinC, double tMaxC, double humidHours)
    {
        Must.BeDay(tMinC, tMaxC);
        Must.Lie(humidHours, 0, 24);
        return tMaxC > DayC && tMinC > NightC && humidHours >= HumidH;
    }
}
