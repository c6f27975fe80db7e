namespace Closemown.Bench.Green;

/// <summary>
/// Nitrogen the roots can take: the soil gives it while warm and moist, and much at once when it is wetted after drought; growth and
/// drainage take it.
/// </summary>
/// <remarks>So growth goes up and down for weeks together. Feedings come now and then and nobody writes them down. Assumptions.</remarks>
/// <param name="AtHand">g/m².</param>
/// <param name="ToCome">Slow part of feedings, g/m².</param>
internal readonly record struct OtherNitrogen(double AtHand, double ToCome)
{
    private const double SoilGives = 0.032, WettedGives = 0.35, TakenPerMm = 0.065, WashedPerMm = 0.012, SlowShare = 0.5, SlowDays = 18;
    private const double Half = 0.6, Well = 2;

    public static OtherNitrogen Spring { get; } = new(1.1, 0);

    /// <summary>Growth against that of well-fed turf.</summary>
    public double Share => AtHand / (AtHand + Half) * (Well + Half) / Well;

    public OtherNitrogen After(SkyDay s, OtherSoil soil, double grewMm, double fedGm2)
    {
        var slow = ToCome / SlowDays * Math.Min(1, Math.Max(0, s.MeanC) / 12);
        var warm = Math.Pow(2, (Math.Clamp(s.MeanC, -5, 25) - 15) / 10);
        var gives = (SoilGives * warm * Math.Min(1, 0.3 + soil.TopShare)) + (soil.Wetted ? WettedGives : 0);
        var hand = AtHand + gives + slow + ((1 - SlowShare) * fedGm2) - (TakenPerMm * grewMm);
        return new(Math.Max(0.1, hand * (1 - Math.Min(0.3, WashedPerMm * soil.DrainedMm))), ToCome - slow + (SlowShare * fedGm2));
    }
}
