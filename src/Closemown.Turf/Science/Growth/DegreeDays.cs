namespace Closemown.Turf;

/// <summary>Warmth of a day above a base, °C·day, by the ways in use. They differ: on one spring day 2.0 against 5.0; say which one a sum was made with.</summary>
/// <remarks>
/// Sources: McMaster &amp; Wilhelm 1997, Agric. For. Meteorol. 87:291 (methods 1 and 2); Baskerville &amp; Emin 1969, Ecology 50:514 (single sine); Zalom et al. 1983,
/// University of California Leaflet 21373 (single triangle, horizontal cut-off). They hold by definition; no range is published. A sum of differences turns into °F·day by 9/5
/// alone, without 32.
/// </remarks>
public static class DegreeDays
{
    /// <summary>Mean first (method 1): max(0, (Tmax + Tmin)/2 − base), °C·day.</summary>
    /// <example>4 and 20 °C, base 10: 2.</example>
    /// <param name="tMinC">Lowest temperature, °C, −100 to 100.</param>
    /// <param name="tMaxC">Highest temperature, °C, not below the lowest.</param>
    /// <param name="baseC">Base, °C, −100 to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static double Mean(double tMinC, double tMaxC, double baseC)
    {
        Must.BeDay(tMinC, tMaxC);
        Must.BeTemperature(baseC);
        return Math.Max(0, ((tMaxC + tMinC) / 2) - baseC);
    }

    /// <summary>Cut first (method 2): both temperatures are brought into [base, cap], then meaned, °C·day.</summary>
    /// <example>4 and 20 °C, base 10: 5. In °F 65 and 90, base 50, cap 86: 25.5.</example>
    /// <param name="tMinC">Lowest temperature, °C, −100 to 100.</param>
    /// <param name="tMaxC">Highest temperature, °C, not below the lowest.</param>
    /// <param name="baseC">Base, °C, −100 to 100.</param>
    /// <param name="capC">Cap, °C, above the base; null for none.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static double Capped(double tMinC, double tMaxC, double baseC, double? capC = null)
    {
        Must.BeDay(tMinC, tMaxC);
        var cap = Cap(baseC, capC);
        return ((Math.Clamp(tMaxC, baseC, cap) + Math.Clamp(tMinC, baseC, cap)) / 2) - baseC;
    }

    /// <summary>Single sine: the area of a sine between both temperatures above the base, and under the cap (horizontal cut-off), °C·day.</summary>
    /// <example>7 and 14 °C, base 12: 0.47.</example>
    /// <param name="tMinC">Lowest temperature, °C, −100 to 100.</param>
    /// <param name="tMaxC">Highest temperature, °C, not below the lowest.</param>
    /// <param name="baseC">Base, °C, −100 to 100.</param>
    /// <param name="capC">Cap, °C, above the base; null for none.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static double Sine(double tMinC, double tMaxC, double baseC, double? capC = null)
    {
        Must.BeDay(tMinC, tMaxC);
        var cap = Cap(baseC, capC);
        return SineAbove(tMinC, tMaxC, baseC) - (capC is null ? 0 : SineAbove(tMinC, tMaxC, cap));
    }

    /// <summary>Single triangle: as the sine, with straight flanks, °C·day.</summary>
    /// <example>7 and 14 °C, base 12: 0.29.</example>
    /// <param name="tMinC">Lowest temperature, °C, −100 to 100.</param>
    /// <param name="tMaxC">Highest temperature, °C, not below the lowest.</param>
    /// <param name="baseC">Base, °C, −100 to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that.</exception>
    public static double Triangle(double tMinC, double tMaxC, double baseC)
    {
        Must.BeDay(tMinC, tMaxC);
        Must.BeTemperature(baseC);
        if (tMinC >= baseC) return ((tMaxC + tMinC) / 2) - baseC;
        return tMaxC <= baseC ? 0 : (tMaxC - baseC) * (tMaxC - baseC) / (2 * (tMaxC - tMinC));
    }

    private static double SineAbove(double tMinC, double tMaxC, double thresholdC)
    {
        double mean = (tMaxC + tMinC) / 2, amplitude = (tMaxC - tMinC) / 2;
        if (tMinC >= thresholdC) return mean - thresholdC;
        if (tMaxC <= thresholdC) return 0;
        // Rounding may carry the ratio past 1 where the threshold all but touches an end.
        var crossing = Math.Asin(Math.Clamp((thresholdC - mean) / amplitude, -1, 1));
        return (((mean - thresholdC) * ((Math.PI / 2) - crossing)) + (amplitude * Math.Cos(crossing))) / Math.PI;
    }

    private static double Cap(double baseC, double? capC)
    {
        Must.BeTemperature(baseC);
        if (capC is not { } cap) return double.PositiveInfinity;
        Must.BeTemperature(cap, nameof(capC));
        return cap > baseC ? cap : throw new ArgumentOutOfRangeException(nameof(capC), cap, $"The cap lies above the base, {Text.N(baseC)}.");
    }
}
