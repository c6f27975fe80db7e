namespace Closemown.Turf;

/// <summary>What a person did to the turf on a day, as far as growth and water go.</summary>
/// <param name="WaterMm">Watered, mm.</param>
/// <param name="NGm2">Nitrogen given, g/m².</param>
/// <param name="Regulator">Whether a growth regulator was given.</param>
public readonly record struct Care(double WaterMm, double NGm2, bool Regulator);

/// <summary>The turf's own clock: water in the root zone, warmth of the soil, nitrogen and regulator at work, day after day.</summary>
/// <remarks>A value: copy it to try a future. Everything in it follows from weather and care alone, so it is the same for every belief about growth.</remarks>
public struct TurfRun
{
    private const int LagDays = 7;
    private const double UnreadWarmthShare = 0.6, WiltKs = 0.5, WiderBy = 1.5;
    private const double CoolNothingC = 1, CoolAllC = 6, WarmNothingC = 10, WarmAllC = 16;
    private readonly TurfArea area;
    private readonly double kc, ofTable, leastKs;
    private double depletion, nitrogen, cold, lag, regulatorSum;
    private int lagDays, dryDays;
    private bool regulated;

    /// <summary>Starts with a full root zone and nothing at work.</summary>
    /// <param name="area">The area.</param>
    /// <param name="watered">Whether waterings are in the record. Where none are, close-mown turf is taken to be watered more or less as it needs.</param>
    public TurfRun(TurfArea area, bool watered)
    {
        ArgumentNullException.ThrowIfNull(area);
        this.area = area;
        leastKs = watered ? 0 : AreaDefaults.LeastUnsaidKs;
        (kc, ofTable) = (TurfCoefficient.Kc(area.Grass, SeasonPart.Middle), DepletionFraction.OfTable(area.Grass));
    }

    /// <summary>Water missing below field capacity now, mm.</summary>
    public readonly double DepletionMm => depletion;

    /// <summary>One day on.</summary>
    /// <param name="date">The day.</param>
    /// <param name="day">Its weather.</param>
    /// <param name="usual">What is usual then: how uncertain weather is that was not read.</param>
    /// <param name="care">What was done.</param>
    public TurfDay Next(DateOnly date, in FilledDay day, UsualDay usual, Care care)
    {
        lagDays = Math.Min(LagDays, lagDays + 1);
        lag += (day.MeanC - lag) / lagDays;
        var warmth = SoilLags(date) ? lag : day.MeanC;
        var potential = GrowthPotential.Of(Math.Clamp(warmth, -60, 60), area.Grass);
        var et0 = Et0(date, day);
        var demand = kc * et0;
        var total = area.Roots.TotalMm;
        var water = WaterBalance.Day(total, DepletionFraction.Adjusted(ofTable, demand), depletion, demand, day.RainMm + care.WaterMm);
        depletion = water.DepletionMm;
        dryDays = care.WaterMm > 0 ? 0 : dryDays + 1;
        var ks = Math.Max(LeastKs(), water.Ks);
        cold = GroundState.After(cold, day.MeanC);
        nitrogen += care.NGm2;
        if (care.Regulator) (regulated, regulatorSum) = (true, 0);
        else if (regulated)
        {
            (regulatorSum, var due) = Clock.After(regulatorSum, Math.Clamp(day.TMinC, -60, 60), Math.Clamp(day.TMaxC, -60, 60));
            regulated = !due;
        }
        var growth = LeafGrowth.MmPerDay(1, potential, ks, regulated);
        var unread = day.Known ? 0 : Slope(warmth, day.Read is null ? usual.SdC : UnreadWarmthShare * usual.SdC) * ks;
        var dry = AreaDefaults.DryDaysShareSd * potential * (1 - ks);
        // Where hardly anything grows, the form of growth is hardly wrong either.
        var form = AreaDefaults.FormShareSd * Math.Min(1, AreaDefaults.FormLeastShare + (potential / AreaDefaults.FormFullFrom));
        var spread = Math.Sqrt((unread * unread) + (dry * dry) + (form * form));
        var off = GroundState.Of(cold, day, water.DrainedMm);
        var wide = LeafGrowth.MmPerDay(1, Wider(warmth, potential), ks, regulated);
        var withheld = LeafGrowth.MmPerDay(1, potential, 1, regulated) - growth;
        var result = new TurfDay(date, day, potential, growth, spread, wide, withheld, nitrogen, et0, depletion, ks, water.DrainedMm, off,
            StressSources.Of(day, area.Grass, potential, ks), ks < WiltKs, regulated ? regulatorSum : null);
        nitrogen *= Math.Exp(-potential / AreaDefaults.FeedDays);
        return result;
    }

    /// <summary>What the roots can draw at the least. Where nobody waters yet, a cool week does not dry turf out, whatever the balance says.</summary>
    private readonly double LeastKs()
    {
        if (leastKs == 0 && dryDays < AreaDefaults.UnsaidAfterDays) return 0;
        var cool = Math.Clamp((AreaDefaults.DriesFromC - lag) / (AreaDefaults.DriesFromC - AreaDefaults.DriesNotC), 0, 1);
        return leastKs + ((1 - leastKs) * cool);
    }

    private readonly GrowthRegulator Clock => area.Grass == TurfGrass.Warm ? GrowthRegulator.UltradwarfBermudagrass : GrowthRegulator.CreepingBentgrass;

    /// <summary>What the wider bell gives more: nothing where leaves no longer lengthen, all some degrees above. Assumptions.</summary>
    private readonly double Wider(double warmthC, double potential)
    {
        var (nothing, all) = area.Grass == TurfGrass.Cool ? (CoolNothingC, CoolAllC) : (WarmNothingC, WarmAllC);
        var lengthens = Math.Clamp((warmthC - nothing) / (all - nothing), 0, 1);
        return lengthens * (GrowthPotential.Of(Math.Clamp(Widened(warmthC), -60, 60), area.Grass) - potential);
    }

    /// <summary>The warmth that gives on the published bell what this warmth gives on one half as wide again.</summary>
    private readonly double Widened(double meanC)
    {
        var optimum = area.Grass == TurfGrass.Cool ? GrowthPotential.CoolOptimumC : GrowthPotential.WarmOptimumC;
        return optimum + ((meanC - optimum) / WiderBy);
    }

    /// <summary>From late winter to late spring the soil is behind the air, and in autumn it is still warm.</summary>
    private readonly bool SoilLags(DateOnly date)
    {
        var month = area.Latitude < 0 ? ((date.Month + 5) % 12) + 1 : date.Month;
        return month is (>= 2 and <= 5) or (>= 9 and <= 11);
    }

    /// <summary>How far growth moves with a standard deviation of warmth.</summary>
    private readonly double Slope(double meanC, double sdC) =>
        Math.Abs(GrowthPotential.Of(Math.Clamp(meanC + sdC, -60, 60), area.Grass) - GrowthPotential.Of(Math.Clamp(meanC - sdC, -60, 60), area.Grass)) / 2;

    private readonly double Et0(DateOnly date, in FilledDay day)
    {
        if (day.Read is not { } read || (read.RhPct ?? read.RhMaxPct ?? read.DewC ?? read.WindMs ?? read.SunH ?? read.RadMjM2) is null)
            return Hargreaves.Mm(day.TMinC, day.TMaxC, area.Latitude, date.DayOfYear).Value;
        return ReferenceEvapotranspiration.Of(new()
        {
            TMinC = day.TMinC,
            TMaxC = day.TMaxC,
            LatitudeDeg = area.Latitude,
            DayOfYear = date.DayOfYear,
            AltitudeM = area.AltitudeM,
            DewC = read.DewC is { } dew ? Math.Min(dew, day.TMaxC) : null,
            RhMinPct = read.RhMinPct,
            RhMaxPct = read.RhMaxPct,
            RhMeanPct = read.RhPct,
            WindMs = read.WindMs,
            WindHeightM = read.WindHeightM,
            SunH = read.SunH,
            RadiationMjM2 = read.RadMjM2,
        }).Mm.Value;
    }
}
