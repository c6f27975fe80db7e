namespace Closemown.Bench.Green;

/// <summary>How a rule of practice treats the height.</summary>
internal enum HeightRule
{
    /// <summary>Always at the wish.</summary>
    Never,

    /// <summary>Raised so that no more than a third comes off; down again by thirds, mowing after mowing.</summary>
    Thirds,

    /// <summary>Raised so; down again by half a mm each third mowing.</summary>
    Slowly,

    /// <summary>As by thirds, but never more than a third by the rule's own estimate, even before a match.</summary>
    Bound,

    /// <summary>At the wish from the day it is told, whatever it takes.</summary>
    Wish,
}

/// <summary>What the rules of practice share: an estimate of the canopy, and the height by the one-third rule.</summary>
internal abstract class GreenRules(HeightRule rule, double startMm) : IGreenStrategy
{
    private double aim = startMm;
    private int since = 99;

    protected GreenFilter Filter { get; } = new(startMm + 1);

    /// <summary>Height aimed at: the wish, or a step on the way down to it.</summary>
    protected double AimMm => aim;

    public Decision Day(GreenDay today)
    {
        Filter.Morning(today);
        if (rule == HeightRule.Wish) aim = today.WishMm;
        if (!today.Free || today.KeepOff || !Wants(today)) return Decision.None;
        if (rule == HeightRule.Wish) return new(true, aim);
        // A lower wish is come to by half a mm each third mowing.
        if (today.WishMm < aim && since + 1 >= 3 && !Held(today) && Filter.Stress < 1) (aim, since) = (Math.Max(today.WishMm, aim - 0.5), 0);
        else since++;
        return new(true, Cut(today));
    }

    protected abstract bool Wants(GreenDay today);

    private double Cut(GreenDay today)
    {
        if (rule == HeightRule.Bound) return Math.Max(Held(today) ? today.SetMm : aim, Math.Ceiling(Filter.ThirdMm * 4) / 4);
        if (rule == HeightRule.Never || Held(today)) return Held(today) ? today.SetMm : aim;
        var lowest = Math.Ceiling((Filter.CanopyMm * 2 / 3 - 0.1) * 4) / 4;
        var cut = Math.Max(aim, lowest);
        if (rule == HeightRule.Slowly && cut < today.SetMm)
        {
            if (since < 3) return today.SetMm;
            since = 0;
            return Math.Max(cut, today.SetMm - 0.5);
        }
        return cut;
    }

    private static bool Held(GreenDay d) => d.Fixtures.Any(f => f.DayNumber - d.Date.DayNumber is >= 0 and <= 3);
}

/// <summary>Mow when the canopy stands a share over the height.</summary>
internal sealed class ThresholdRule(double over, HeightRule rule, double startMm) : GreenRules(rule, startMm)
{
    protected override bool Wants(GreenDay today) => Filter.CanopyMm >= (1 + over) * Math.Min(AimMm, today.SetMm);
}

/// <summary>Mow whenever possible.</summary>
internal sealed class EveryFreeDay(HeightRule rule, double startMm) : GreenRules(rule, startMm)
{
    protected override bool Wants(GreenDay today) => true;
}

/// <summary>Looks to the next usual day: mow today where waiting till then costs more by share and band than the growth still to come saves of a mowing.</summary>
internal sealed class OneAhead(HeightRule rule, double startMm) : GreenRules(rule, startMm)
{
    private static readonly Closemown.Turf.PlanLosses Losses = new();

    protected override bool Wants(GreenDay today)
    {
        var wait = 1;
        while (wait < 7 && !today.Weekdays.Contains(today.Date.AddDays(wait).DayOfWeek)) wait++;
        var run = Filter.Run;
        var (later, band) = (Filter.CanopyMm, 0.0);
        var top = 1.5 * today.WishMm;
        for (var a = 0; a < wait; a++)
        {
            var s = today.Forecast[Math.Min(a, today.Forecast.Length - 1)];
            if (later > top) band += Losses.OutOfBand + (Losses.AboveBand * (later - top));
            var (after, share, _, _) = run.Next(s, today.Date.AddDays(a).DayOfYear, run.WaterMm < 13 ? 5 : 0);
            run = after;
            later += Filter.RateMm * share;
        }
        var hard = Hard(later, Filter.CanopySd + (0.15 * wait)) - Hard(Filter.CanopyMm, Filter.CanopySd);

        var saves = (later - Filter.CanopyMm) / (0.43 * AimMm);
        return Filter.CanopyMm > AimMm * 1.05 && hard + band > saves;
    }

    private double Hard(double canopy, double sd) => OverLoss.Of(canopy, AimMm, sd, Losses);
}
