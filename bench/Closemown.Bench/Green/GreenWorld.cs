namespace Closemown.Bench.Green;

/// <summary>A green that grows by rules of its own, which no strategy knows.</summary>
/// <remarks>
/// Growth by a curve of warmth (soil behind air), water in a bucket, leaf left to grow from, a check after a hard cut, and each day's luck. Stress by cold, heat, drought, hard cuts and scalps.
/// The green base follows the standing height. All assumptions; losses as in docs/priors.md.
/// </remarks>
internal sealed class GreenWorld : IGreen
{
    private const double BucketMm = 45, SoilDays = 6, BaseDays = 14, StressDays = 6;
    private readonly int seed;
    private readonly SkyDay[] sky;
    private double soilC, waterMm = 36, checkedGrowth;

    public GreenWorld(int seed, GreenMake make, SkyDay[] sky, double startMm)
    {
        (this.seed, Make, this.sky) = (seed, make, sky);
        soilC = sky[0].MeanC;
        for (var i = 0; i < GreenSky.Before; i++)
        {
            soilC += (sky[i].MeanC - soilC) / SoilDays;
            waterMm = Math.Clamp(waterMm + sky[i].RainMm - Uses(sky[i]), 0.3 * BucketMm, BucketMm);
        }
        CanopyMm = startMm;
        BaseMm = make.BaseShare * startMm;
    }

    public GreenMake Make { get; }

    public double CanopyMm { get; private set; }

    public double BaseMm { get; private set; }

    public double Stress { get; private set; }

    public double WateredMm { get; private set; }

    private double Water => waterMm / BucketMm;

    public bool Wilting => Water < 0.15;

    public bool KeepOff(int day) => Sky(day).TMinC < 0.3 || soilC < 0.5 || (Water > 0.97 && Sky(day).RainMm > 8);

    public SkyDay Sky(int day) => sky[day + GreenSky.Before];

    public SkyDay[] Forecast(int day) => GreenForecast.Of(seed, this, day);

    public IGreen Copy() => (IGreen)MemberwiseClone();

    /// <summary>What the mower leaves at a setting on a day, mm.</summary>
    public double CutOf(double setMm, int day) => Math.Max(1, setMm + Make.CutOffMm + (0.12 * GreenChance.Normal(seed, GreenChance.Cut, day)));

    public (double Share, bool Scalped) Mow(double setMm, int day)
    {
        var cut = CutOf(setMm, day);
        if (cut >= CanopyMm) return (0, false);
        var share = (CanopyMm - cut) / CanopyMm;
        var scalped = cut < BaseMm;
        CanopyMm = cut;
        Stress = Math.Clamp(Stress + 0.03 + (4 * Math.Max(0, share - (1 / 3.0))) + (scalped ? 1 : 0) + (0.4 * Stress * share), 0, 3);
        checkedGrowth = Math.Max(checkedGrowth, Math.Clamp(1.5 * (share - 0.25), 0, 0.5));
        return (share, scalped);
    }

    /// <summary>What a day will grow at a standing height, mm; the turf as it is now.</summary>
    public double GrowthMm(int day)
    {
        var s = Sky(day);
        var luck = Math.Pow(1.25, GreenChance.Normal(seed, GreenChance.Growth, day));
        var leaf = Math.Min(1.15, CanopyMm / (CanopyMm + 2) * 1.4);
        return Make.RateMm * Warmth((0.6 * soilC) + (0.4 * s.MeanC)) * Math.Min(1, Water / 0.4) * leaf * (1 - checkedGrowth) * (1 - (0.12 * Stress)) * luck;
    }

    /// <summary>Where the last day drew stress.</summary>
    public double StressInput { get; private set; }

    public (double GrowthMm, bool KeepOff, bool Wilting, double StressInput)[] Future(int day, int days, double keptMm)
    {
        var copy = (GreenWorld)MemberwiseClone();
        var future = new (double, bool, bool, double)[days];
        for (var a = 0; a < days; a++)
        {
            copy.CanopyMm = keptMm;
            var (grows, off, wilts) = (copy.GrowthMm(day + a), copy.KeepOff(day + a), copy.Wilting);
            copy.Pass(day + a);
            future[a] = (grows, off, wilts, copy.StressInput);
        }
        return future;
    }

    public void Pass(int day)
    {
        var s = Sky(day);
        soilC += (s.MeanC - soilC) / SoilDays;
        CanopyMm += GrowthMm(day);
        checkedGrowth *= 0.6;
        BaseMm += ((Make.BaseShare * CanopyMm) - BaseMm) / BaseDays;
        WateredMm = Water < 0.35 && s.RainMm < 1 && GreenChance.Uniform(seed, GreenChance.Water, day) < Make.Waters ? 8 : 0;
        waterMm = Math.Clamp(waterMm + s.RainMm + WateredMm - (Uses(s) * Math.Min(1, Water / 0.3)), 0, BucketMm);
        var cold = Math.Clamp((-1 - s.TMinC) / 4, 0, 3);
        var heat = Math.Clamp((s.TMaxC - 30) / 4, 0, 3);
        var drought = Math.Clamp((0.35 - Water) / 0.35 * 2.2, 0, 3);
        StressInput = Math.Max(cold, Math.Max(heat, drought));
        Stress = Math.Clamp(Stress + ((StressInput - Stress) / StressDays), 0, 3);
    }

    private static double Uses(SkyDay s) => Math.Max(0, 0.3 + (0.16 * s.MeanC) + (0.05 * (s.TMaxC - s.TMinC)));

    private static double Warmth(double c)
    {
        const double Low = 3, Best = 19, High = 34;
        if (c <= Low || c >= High) return 0;
        return Math.Pow((c - Low) / (Best - Low), 1.4) * Math.Pow((High - c) / (High - Best), 1.4 * (High - Best) / (Best - Low));
    }
}
