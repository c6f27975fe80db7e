namespace Closemown.Turf;

/// <summary>Air pressure at an altitude, and the psychrometric constant that goes with it.</summary>
/// <remarks>
/// FAO-56 eq. 7 and 8, for air of 20 °C; weather moves the pressure by a few per cent, which hardly touches evapotranspiration. The paper gives no range.
/// Source: Allen, Pereira, Raes &amp; Smith 1998, FAO Irrigation and Drainage Paper 56.
/// </remarks>
/// <example>1800 m: 81.8 kPa, 0.054 kPa/°C (FAO-56 example 2).</example>
public static class AirPressure
{
    private const double SeaLevelKpa = 101.3, Kelvin20 = 293, LapseKPerM = 0.0065, Exponent = 5.26, Psychrometric = 0.665e-3;

    /// <summary>P = 101.3·((293 − 0.0065·z)/293)^5.26, kPa (eq. 7).</summary>
    /// <param name="altitudeM">Height above the sea, m, −500 to 9000.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static double Kpa(double altitudeM)
    {
        Must.Lie(altitudeM, -500, 9000);
        return SeaLevelKpa * Math.Pow((Kelvin20 - (LapseKPerM * altitudeM)) / Kelvin20, Exponent);
    }

    /// <summary>γ = 0.000665·P, kPa/°C (eq. 8).</summary>
    /// <param name="pressureKpa">Air pressure, kPa, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not above 0.</exception>
    public static double PsychrometricKpaPerC(double pressureKpa)
    {
        Must.BePositive(pressureKpa);
        return Psychrometric * pressureKpa;
    }
}
