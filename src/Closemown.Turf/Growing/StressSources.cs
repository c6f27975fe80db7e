namespace Closemown.Turf;

/// <summary>What a day asks of the plant, each on the scale of stress: 0 none, 1 slight, 2 marked, 3 severe.</summary>
/// <remarks>
/// Straight lines between a temperature or a lack of water that is felt and one that is severe: assumptions after common practice, no source. The area's record scales
/// them (how much of it this turf feels).
/// </remarks>
/// <param name="Cold">Nights below freezing while nothing grows.</param>
/// <param name="Heat">Days too hot for the kind of grass.</param>
/// <param name="Drought">Water the roots can no longer draw.</param>
public readonly record struct StressSources(double Cold, double Heat, double Drought)
{
    /// <summary>The scale's top.</summary>
    public const double Severe = 3;

    private const double ColdFromC = 1, ColdPerC = 4.0, NoGrowth = 0.25;
    private const double CoolHeatFromC = 28, WarmHeatFromC = 39, HeatPerC = 3.5;
    private const double DroughtPerKs = 3.5;

    /// <summary>The day's sources.</summary>
    /// <param name="day">The day.</param>
    /// <param name="grass">Kind of grass.</param>
    /// <param name="potential">Growth potential of the day, 0 to 1.</param>
    /// <param name="ks">How much of its demand the turf could draw, 0 to 1.</param>
    public static StressSources Of(in FilledDay day, TurfGrass grass, double potential, double ks)
    {
        var cold = potential < NoGrowth ? Math.Clamp((ColdFromC - day.TMinC) / ColdPerC * (1 + ((NoGrowth - potential) / NoGrowth)) / 2 * Severe / 2, 0, Severe) : 0;
        var heat = Math.Clamp((day.TMaxC - (grass == TurfGrass.Cool ? CoolHeatFromC : WarmHeatFromC)) / HeatPerC, 0, Severe);
        return new(cold, heat, Math.Clamp((1 - ks) * DroughtPerKs, 0, Severe));
    }

    /// <summary>The greatest of them: causes at once do not add up.</summary>
    public double Greatest => Math.Max(Cold, Math.Max(Heat, Drought));
}
