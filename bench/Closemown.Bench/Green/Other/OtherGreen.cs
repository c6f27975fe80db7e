using Closemown.Turf;

namespace Closemown.Bench.Green;

/// <summary>
/// A green of the other world: leaf, reserve, warmth, soil, nitrogen, base and stress by laws that are neither the first world's nor
/// the product's.
/// </summary>
/// <remarks>
/// "Growth at its best" is what 5 mm turf grows on a day of full warmth and water, well fed, with three days' growth at hand and no
/// luck: <see cref="GreenMake.RateMm"/>.
/// The numbers were set by looking at growth, stress, water and weather under two fixed rules (seeds from 100), before any plan was
/// made on it, and are left as they are. Assumptions.
/// </remarks>
internal sealed class OtherGreen : IGreen
{
    private const double CutSd = 0.1, SoftMm = 0.15, FirmMm = 0.08, FrostC = 0.5, DampedBy = 0.12, ClockEvery = 2, ClockMm = 5,
        HandMm = 12, HandFrom = 0.35, LeastCutMm = 1;
    private readonly int seed;
    private readonly OtherMake make;
    private readonly OtherDay[] sky;
    private readonly double[] luck, fed;
    private readonly bool[] free;
    private OtherWarmth warmth;
    private OtherSoil soil = OtherSoil.Moist;
    private OtherNitrogen nitrogen = OtherNitrogen.Spring;
    private OtherLeaf leaf = new(2, OtherLeaf.Holds * 0.85);
    private OtherStress stress;
    private OtherBase sheaths;

    public OtherGreen(int seed, OtherMake make, OtherDay[] sky, bool[] free, double startMm)
    {
        (this.seed, this.make, this.sky, this.free) = (seed, make, sky, free);
        (luck, fed) = (OtherLuck.Of(seed, sky), OtherFeeding.Of(seed, make, sky.Length));
        warmth = new(sky[0].Seen.MeanC);
        for (var i = 0; i < OtherSky.Before; i++)
        {
            warmth = warmth.After(sky[i].Seen);
            soil = soil.After(sky[i], 0, make.DeepRoots);
        }
        CanopyMm = startMm;
        sheaths = new(make.Seen.BaseShare, startMm);
    }

    public GreenMake Make => make.Seen;

    public double CanopyMm { get; private set; }

    public double BaseMm => sheaths.Mm;

    public double Stress => stress.Seen(leaf);

    public double WateredMm { get; private set; }

    public bool Wilting => soil.Wilts;

    public bool KeepOff(int day)
    {
        double lately = 0;
        for (var a = 1; a <= 5; a++) lately += Sky(day - a).MeanC / 5;
        return Sky(day).TMinC < FrostC || lately < 0 || soil.Soaked;
    }

    public SkyDay Sky(int day) => At(day).Seen;

    public SkyDay[] Forecast(int day) => OtherForecast.Of(seed, day, At, OtherClimate.Of(seed), OtherSky.First(seed));

    public IGreen Copy() => (IGreen)MemberwiseClone();

    public (double Share, bool Scalped) Mow(double setMm, int day)
    {
        // On a soaked green the mower sinks in, on a hard one it rides.
        var ground = soil.TopShare > 0.9 ? -SoftMm : soil.TopShare < HandFrom ? FirmMm : 0;
        var cut = Math.Max(LeastCutMm, setMm + Make.CutOffMm + ground + (CutSd * GreenChance.Normal(seed, GreenChance.OtherCut, day)));
        if (cut >= CanopyMm) return (0, false);
        var share = (CanopyMm - cut) / CanopyMm;
        var scalped = cut < BaseMm;
        var left = leaf.Cut(CanopyMm, cut, BaseMm);
        stress = stress.Cut(1 - (left.Area / leaf.Area), scalped, Wilting);
        (leaf, sheaths, CanopyMm) = (left, sheaths.Cut(cut), cut);
        return (share, scalped);
    }

    public void Pass(int day)
    {
        var d = At(day);
        WateredMm = Watered(day, d);
        soil = soil.After(d, WateredMm, make.DeepRoots * (0.5 + (0.5 * leaf.Filled)));
        var brings = leaf.Fixed(d, make.FixesMm, soil.Stretch);
        var weather = warmth.Share(d.Seen) * soil.Stretch;
        var asks = Make.RateMm * weather * nitrogen.Share * luck[day + OtherSky.Before] * (1 - (DampedBy * stress.Damage));
        var grew = leaf.Grows(asks, brings);
        leaf = leaf.After(d, brings, grew);
        CanopyMm += grew;
        nitrogen = nitrogen.After(d.Seen, soil, grew, fed[day + OtherSky.Before]);
        sheaths = sheaths.After(OtherWarmth.Degrees(d.Seen), CanopyMm);
        stress = stress.After(d, soil, make.HeatC);
        warmth = warmth.After(d.Seen);
    }

    public (double GrowthMm, bool KeepOff, bool Wilting, double StressInput)[] Future(int day, int days, double keptMm)
    {
        var copy = (OtherGreen)MemberwiseClone();
        var future = new (double, bool, bool, double)[days];
        for (var a = 0; a < days; a++)
        {
            copy.Keep(keptMm);
            var (off, wilts, before) = (copy.KeepOff(day + a), copy.Wilting, copy.Stress);
            copy.Pass(day + a);
            // A plan lets stress go a part of the way to what draws it each day: told in its terms, it comes out as it truly will.
            var draws = Math.Clamp(before + (AreaDefaults.StressDays * (copy.Stress - before)), 0, 3);
            future[a] = (copy.CanopyMm - keptMm, off, wilts, draws);
        }
        return future;
    }

    /// <summary>Set to a height without the harm of a mowing; leaf with it.</summary>
    private void Keep(double mm)
    {
        if (mm < CanopyMm) leaf = leaf.Cut(CanopyMm, mm, BaseMm);
        CanopyMm = mm;
    }

    /// <summary>By a clock, every second night unless it rained; or by hand, where someone is there and sees it dry.</summary>
    private double Watered(int day, OtherDay d)
    {
        if (d.Seen.RainMm > 1) return 0;
        if (make.Clock) return day % ClockEvery == 0 && Sky(day - 1).RainMm < 3 && Sky(day - 2).RainMm < 6 ? ClockMm : 0;
        var seen = Math.Max(0, day) < free.Length && free[Math.Max(0, day)] && (soil.TopShare < HandFrom || Wilting);
        return seen && GreenChance.Uniform(seed, GreenChance.OtherWatering, day) < Make.Waters ? HandMm : 0;
    }

    private OtherDay At(int day) => sky[day + OtherSky.Before];
}
