namespace Closemown.Bench.Green;

/// <summary>Stress as it is seen: a reserve that runs short, and damage that heals as slowly as new leaf comes.</summary>
/// <remarks>Mapped on the scale of a look, 0 none to 3 severe. Assumptions.</remarks>
/// <param name="Damage">Of frost, heat, drought, hard cuts and scalps.</param>
internal readonly record struct OtherStress(double Damage)
{
    private const double ShortFrom = 0.35, ShortMost = 2, HealsDegrees = 120, HeatPerC = 0.07, DroughtFrom = 0.75, DroughtMost = 0.22,
        FrostFromC = -2, FrostPerC = 0.05, FrostMost = 0.2;
    private const double BareFrom = 0.65, BareTimes = 1.5, ScalpHurts = 0.7, TornWilting = 0.25, Wheels = 0.02;

    public double Seen(OtherLeaf leaf) => Math.Clamp((ShortMost * Math.Max(0, ShortFrom - leaf.Filled) / ShortFrom) + Damage, 0, 3);

    public OtherStress After(OtherDay day, OtherSoil soil, double heatC)
    {
        var heat = HeatPerC * Math.Max(0, day.Seen.TMaxC - heatC) * (1.5 - (0.5 * soil.Drawn));
        var dry = DroughtMost * Math.Max(0, DroughtFrom - soil.Drawn) / DroughtFrom;
        var frost = Math.Min(FrostMost, FrostPerC * Math.Max(0, FrostFromC - day.Seen.TMinC));
        return new(Math.Min(3, (Damage * Math.Exp(-OtherWarmth.Degrees(day.Seen) / HealsDegrees)) + heat + dry + frost));
    }

    /// <param name="leafLost">Share of the green leaf that the cut took.</param>
    /// <param name="scalped">Whether it went below the base.</param>
    /// <param name="wilting">Whether the turf wilted.</param>
    public OtherStress Cut(double leafLost, bool scalped, bool wilting)
    {
        var bared = BareTimes * Math.Max(0, leafLost - BareFrom);
        return new(Math.Min(3, Damage + Wheels + bared + (scalped ? ScalpHurts : 0) + (wilting ? TornWilting : 0)));
    }
}
