using Closemown.Turf;

namespace Closemown.Bench.Green;

/// <summary>A season lived under a strategy, counted by the green's own truth.</summary>
internal sealed record GreenSeason
{
    /// <summary>How often the turf is read on a free day.</summary>
    internal static double ReadBefore { get; set; } = 0.35;

    private const double ReadAfter = 0.3, ReadBox = 0.4, Looked = 0.3, SpotSd = 0.3, SpreadOfFive = SpotSd / 2.2360679775;

    public double Cost { get; private set; }

    public double StressCost { get; private set; }

    public double BandCost { get; private set; }

    public double ShareCost { get; private set; }

    public int Days { get; private set; }

    public int DaysNear { get; private set; }

    public int Mowings { get; private set; }

    public int OverThird { get; private set; }

    public int OverHalf { get; private set; }

    public int Scalps { get; private set; }

    public int Changes { get; private set; }

    public int BrokenLimits { get; private set; }

    public double StressDays { get; private set; }

    public double Minutes { get; private set; }

    /// <summary>Standing heights said beforehand, and those that lay within what was said with 90 in 100.</summary>
    public int Said { get; private set; }

    /// <inheritdoc cref="Said"/>
    public int SaidIn { get; private set; }

    /// <summary>Sum of the heights said less those that stood, mm, and of their squares.</summary>
    public double OffSum { get; private set; }

    /// <inheritdoc cref="OffSum"/>
    public double OffSquares { get; private set; }

    /// <summary>How far the growth rate believed after four and after ten weeks lies from the green's own, as a share; null where nothing was said.</summary>
    public double? RateOff4 { get; private set; }

    /// <inheritdoc cref="RateOff4"/>
    public double? RateOff10 { get; private set; }

    private void Heard(ISays says, IGreen world, int day)
    {
        const double Z90 = 1.6448536;
        if (says.Said is { } said)
        {
            Said++;
            OffSum += said.Mean - world.CanopyMm;
            OffSquares += Math.Pow(said.Mean - world.CanopyMm, 2);
            if (Math.Abs(world.CanopyMm - said.Mean) <= Z90 * said.Sd) SaidIn++;
        }
        if (says.RateMm is not { } rate) return;
        if (day <= 28) RateOff4 = Math.Abs(rate - world.Make.RateMm) / world.Make.RateMm;
        if (day <= 70) RateOff10 = Math.Abs(rate - world.Make.RateMm) / world.Make.RateMm;
    }

    /// <summary>First day mown to the lower wish, by the setting or by what it leaves, less the day it was due; null where none was wished or it was never reached.</summary>
    public int? Late { get; private set; }

    public static GreenSeason Of(GreenLot lot, int days, Func<GreenTruth, IGreenStrategy> make, List<TraceDay>? trace = null)
    {
        var (seed, first, world, wish, free) = lot;
        var green = world.Make;
        var strategy = make(new(world, free, seed));
        var season = new GreenSeason { Days = days };
        var set = wish.StartMm;
        var (last, since) = (set, 99);
        (double Set, double Before, double Cut, bool Scalped)? yesterday = null;
        var losses = new PlanLosses();
        for (var t = 0; t < days; t++)
        {
            var off = world.KeepOff(t);
            var today = new GreenDay
            {
                Number = t,
                Date = first.AddDays(t),
                Free = free[t],
                KeepOff = off,
                Wilting = world.Wilting,
                Yesterday = world.Sky(t - 1),
                Forecast = world.Forecast(t),
                WateredMm = world.WateredMm,
                CanopyMm = free[t] && GreenChance.Uniform(seed, GreenChance.WhenRead, t) < ReadBefore ? world.CanopyMm + (SpreadOfFive * GreenChance.Normal(seed, GreenChance.Spots, t)) : null,
                MownYesterday = yesterday is { } y
                    ? (y.Set,
                        GreenChance.Uniform(seed, GreenChance.WhenRead, t, 1) < ReadAfter ? y.Cut + (SpreadOfFive * GreenChance.Normal(seed, GreenChance.Spots, t, 1)) : null,
                        GreenChance.Uniform(seed, GreenChance.WhenRead, t, 2) < ReadBox ? green.ClipLitres * Math.Max(0, y.Before - y.Cut) * Math.Pow(1.15, GreenChance.Normal(seed, GreenChance.Clippings, t)) : null)
                    : null,
                StressSeen = free[t] && GreenChance.Uniform(seed, GreenChance.WhenRead, t, 3) < Looked
                    ? (int)Math.Clamp(Math.Round(world.Stress + (0.5 * GreenChance.Normal(seed, GreenChance.Spots, t, 2))), 0, 3)
                    : null,
                ScalpSeen = yesterday?.Scalped ?? false,
                SetMm = set,
                WishMm = wish.Mm(t),
                WishBy = wish.By(t),
                Weekdays = green.Weekdays,
                Fixtures = wish.Fixtures,
            };
            var decision = strategy.Day(today);
            if (strategy is ISays says) season.Heard(says, world, t);
            yesterday = null;
            var (stood, taken) = (world.CanopyMm, (double?)null);
            if (decision.Mow && free[t] && !off)
            {
                if (Math.Abs(decision.CutMm - set) > 0.01)
                {
                    season.Changes++;
                    season.Minutes += 10;
                    season.Cost += losses.HeightChange;
                }
                var lowered = decision.CutMm < last - 0.01;
                if (lowered && (last - decision.CutMm > PlanLimits.LowerMm + 0.01 || since + 1 < PlanLimits.LowerApart || world.Wilting)) season.BrokenLimits++;
                since = lowered ? 0 : since + 1;
                (set, last) = (decision.CutMm, decision.CutMm);
                var before = world.CanopyMm;
                var (share, scalped) = world.Mow(set, t);
                taken = share;
                yesterday = (set, before, Math.Min(before, world.CanopyMm), scalped);
                season.Mowings++;
                season.Minutes += 30;
                var hard = share > 1 / 3.0 ? losses.OverThird + (losses.ExcessShare * (share - (1 / 3.0))) + (share > 0.5 ? losses.OverHalf : 0) : 0;
                if (share > 1 / 3.0) season.OverThird++;
                if (share > 0.5) season.OverHalf++;
                if (scalped) season.Scalps++;
                season.ShareCost += hard;
                season.Cost += losses.Mowing + hard + (scalped ? losses.Scalp : 0);
                if (green.StepsDown && t >= 20 && season.Late is null && set + Math.Min(0, green.CutOffMm) <= wish.Mm(t) + 0.05) season.Late = t - 60;
            }
            var (low, high) = wish.Band(t);
            var stands = world.CanopyMm;
            var band = stands < low ? losses.OutOfBand : stands > high ? losses.OutOfBand + (losses.AboveBand * (stands - high)) : 0;
            if (band == 0) season.DaysNear++;
            season.BandCost += band;
            season.StressCost += losses.Stress * world.Stress;
            season.StressDays += world.Stress;
            season.Cost += band + (losses.Stress * world.Stress);
            var (wilting, standing) = (world.Wilting, world.CanopyMm);
            world.Pass(t);
            trace?.Add(new(today.Date, world.Sky(t), free[t], off, wilting, stood, taken, world.CanopyMm - standing, world.BaseMm, world.Stress, world.WateredMm));
        }
        return season;
    }
}

/// <summary>What only the strategy that is told everything may look at.</summary>
internal sealed record GreenTruth(IGreen World, bool[] Free, int Seed);
