namespace Closemown.Turf;

/// <summary>Constants that FAO-56 uses in more than one equation.</summary>
/// <remarks>Allen, Pereira, Raes &amp; Smith 1998, FAO Irrigation and Drainage Paper 56. Equation numbers are given where each is used.</remarks>
internal static class Fao56
{
    /// <summary>Solar constant Gsc, MJ/m² a minute (eq. 21).</summary>
    public const double SolarConstant = 0.0820;

    /// <summary>1/λ, the water that one MJ/m² evaporates, mm, with λ = 2.45 MJ/kg (eq. 20).</summary>
    public const double MmPerMj = 0.408;

    /// <summary>Offset and slope of the saturation curve's exponent (eq. 11), °C and 1.</summary>
    public const double CurveOffsetC = 237.3, CurveSlope = 17.27;

    /// <summary>Scale of the saturation curve (eq. 11), kPa: its value at 0 °C.</summary>
    public const double CurveKpa = 0.6108;
}
