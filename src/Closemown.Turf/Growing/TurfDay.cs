namespace Closemown.Turf;

/// <summary>What one day brings the turf.</summary>
/// <param name="Date">The day.</param>
/// <param name="Weather">Its weather, filled.</param>
/// <param name="Potential">Growth potential of the warmth that counts, 0 to 1.</param>
/// <param name="Growth">Growth as a share of the full rate: potential × water × regulator, 0 to 1.</param>
/// <param name="GrowthSd">How uncertain that is by weather that was not read, by a dry soil and by the form itself, same unit: alike from day to day.</param>
/// <param name="Wide">What a bell half as wide again would give more, same unit.</param>
/// <param name="Dry">What dry soil withholds by the water balance, same unit.</param>
/// <param name="NitrogenGm2">Nitrogen still at work from feeds, g/m².</param>
/// <param name="Et0Mm">Reference evapotranspiration, mm.</param>
/// <param name="DepletionMm">Water missing below field capacity at the day's end, mm.</param>
/// <param name="Ks">How much of its demand the turf could draw, 0 to 1.</param>
/// <param name="DrainedMm">Water that ran through, mm.</param>
/// <param name="KeepOff">What keeps everyone off.</param>
/// <param name="Stress">What it asks of the plant.</param>
/// <param name="Wilting">Whether the roots draw less than half of what is asked.</param>
/// <param name="RegulatorCDays">Warmth since a growth regulator was given, °C·day; null where none is at work.</param>
public sealed record TurfDay(
    DateOnly Date, FilledDay Weather, double Potential, double Growth, double GrowthSd, double Wide, double Dry, double NitrogenGm2,
    double Et0Mm, double DepletionMm, double Ks, double DrainedMm,
    KeepOff KeepOff, StressSources Stress, bool Wilting, double? RegulatorCDays)
{
    /// <summary>Frost of the night.</summary>
    public Frost Frost => FrostRisk.Of(Weather.TMinC);
}
