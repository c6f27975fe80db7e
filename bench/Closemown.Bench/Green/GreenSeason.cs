using Closemown.Turf;

namespace Closemown.Bench.Green;

/// <summary>A season lived under a strategy, counted by the green's own truth.</summary>
internal sealed record GreenSeason
{
    /// <summary>How often the turf is read on a free day.</summary>
    internal static double ReadBefore { get; set; } = 0.35;

    /// <summary>A height is reached where a keeper would not set the mower anew for the rest of the way.</summary>
    private const double ReachedMm = 0.1;

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

    /// <summary>What the strategy said, held to what came.</summary>
    public GreenHeard Heard { get; } = new();

    /// <summary>First day mown to the lower wish, by the setting or by what it leaves, less the day it was due; null where none was wished or it was never reached.</summary>
    public int? Late { get; private set; }

    /// <summary>Whether a lower cut was wished for during the season.</summary>
    public bool Lowers { get; private init; }

    /// <summary>Days after the one promised on which it was mown to; null where none was promised or it was never reached.</summary>
    public int? AfterPromise { get; private set; }

    /// <summary>Whether a promised day lies past the season's end, so that only a wish reached early can be held to it.</summary>
    public bool PromisedPastEnd { get; private set; }

    public static GreenSeason Of(GreenLot lot, int days, Func<GreenTruth, IGreenStrategy> make, List<TraceDay>? trace = null)
    {
        var (seed, first, world, wish, free) = lot;
        var green = world.Make;
        var strategy = make(new(world, free, seed));
        var season = new GreenSeason { Days = days, Lowers = green.StepsDown };
        var set = wish.StartMm;
        var (last, since) = (set, 99);
        (double Set, double Before, double Cut, bool Scalped)? yesterday = null;
        var losses = new PlanLosses();
        for (var t = 0; t < days; t++)
        {
            var (day, off) = (t, world.KeepOff(t));
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
                Read = () => world.CanopyMm + (SpreadOfFive * GreenChance.Normal(seed, GreenChance.Spots, day, 3)),
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
            if (strategy is ISays says) season.Heard.Hear(says, world, t, green.StepsDown && t >= GreenWish.ToldOn);
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
                var reached = set + Math.Min(0, green.CutOffMm) <= wish.Mm(t) + ReachedMm;
                if (green.StepsDown && t >= GreenWish.ToldOn && season.Late is null && reached) season.Late = t - GreenWish.DueOn;
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
            var grew = world.CanopyMm - standing;
            trace?.Add(new(today.Date, world.Sky(t), free[t], off, wilting, stood, taken, grew, world.BaseMm, world.Stress, world.WateredMm));
        }
        if (season.Heard.Promise is { } promise)
        {
            season.PromisedPastEnd = promise.On.DayNumber - first.DayNumber >= days;
            if (season.Late is { } late) season.AfterPromise = first.AddDays(GreenWish.DueOn + late).DayNumber - promise.On.DayNumber;
        }
        return season;
    }
}

/// <summary>What only the strategy that is told everything may look at.</summary>
internal sealed record GreenTruth(IGreen World, bool[] Free, int Seed);
