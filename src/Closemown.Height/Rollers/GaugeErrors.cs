namespace Closemown.Height;

/// <summary>What the gauge bar itself can add to a reading, µm.</summary>
public static class GaugeErrors
{
    /// <summary>Sag of a bar lying on its ends, under its own weight, µm: 5·w·L⁴/(384·E·I) with I = b·t³/12.</summary>
    /// <remarks>Source: beam tables, e.g. Young and Budynas 2002, Roark's Formulas for Stress and Strain, table 8.1 case 2e (case number from memory).</remarks>
    /// <example>Steel (E 207 000 N/mm², 7850 kg/m³), 450 mm long, 25 wide, 12 thick: 16.5 µm.</example>
    /// <param name="lengthMm">Between the supports, mm.</param>
    /// <param name="thickMm">Height of the section, mm.</param>
    /// <param name="elasticNPerMm2">Young's modulus, N/mm².</param>
    /// <param name="densityKgPerM3">Density, kg/m³. The width of the section cancels.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is not positive.</exception>
    public static double BarSagUm(double lengthMm, double thickMm, double elasticNPerMm2 = 207000, double densityKgPerM3 = 7850)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(lengthMm);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(thickMm);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(elasticNPerMm2);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(densityKgPerM3);
        const double StandardGravity = 9.80665;          // m/s²
        var weightNPerMmPerWidth = densityKgPerM3 * 1e-9 * StandardGravity * thickMm;
        var inertiaPerWidth = Math.Pow(thickMm, 3) / 12;
        return 1000 * 5 * weightNPerMmPerWidth * Math.Pow(lengthMm, 4) / (384 * elasticNPerMm2 * inertiaPerWidth);
    }

    /// <summary>Growth of a length with warmth, µm: α·L·ΔT.</summary>
    /// <remarks>Source of α for steel, 11.5e-6 per kelvin: JCGM 100:2008 (GUM), H.1.</remarks>
    /// <example>300 mm of steel 10 K warmer: 34.5 µm: read the machine cold.</example>
    public static double WarmthUm(double lengthMm, double kelvin, double perKelvin = 11.5e-6) => 1000 * perKelvin * lengthMm * kelvin;

    /// <summary>What a gauge held askew reads too much, µm: L·(1 − cos θ).</summary>
    /// <remarks>Source: plane geometry.</remarks>
    /// <example>5 mm read 3° off square: 6.9 µm.</example>
    public static double AskewUm(double lengthMm, double degrees) => 1000 * lengthMm * 2 * Math.Pow(Math.Sin(degrees * Math.PI / 360), 2);
}
