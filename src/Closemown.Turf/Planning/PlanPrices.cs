using Closemown.Estimation;

namespace Closemown.Turf;

/// <summary>What a day and a mowing cost.</summary>
internal sealed class PlanPrices
{
    private const double HalfShare = 0.5, CutOfStanding = 0.85, BeforeDue = 0.25;
    private readonly PlanProblem p;
    private readonly PlanGrid grid;
    private readonly double growthMm;
    private readonly int solvedDays;

    public PlanPrices(PlanProblem p, PlanGrid grid, double meanGrowthMm, int solvedDays)
    {
        (this.p, this.grid, this.solvedDays) = (p, grid, solvedDays);
        growthMm = Math.Max(0.05, meanGrowthMm);
    }

    /// <summary>Expected loss of a mowing that may take more than a third or a half.</summary>
    public static double Over(double canopyMm, double cutMm, double canopySdMm, double cutSdMm, PlanLosses losses)
    {
        var share = (canopyMm - cutMm) / canopyMm;
        var sd = Math.Max(1e-6, double.Hypot(cutSdMm / canopyMm, canopySdMm * cutMm / (canopyMm * canopyMm)));
        var z = (share - ThirdRule.Share) / sd;
        if (z < -6) return 0;
        var p = NormalMath.Phi(z);
        return (losses.OverThird * p) + (losses.ExcessShare * sd * ((z * p) + NormalMath.Density(z)))
            + (losses.OverHalf * NormalMath.Phi((share - HalfShare) / sd));
    }

    /// <summary>The probability that more than a third comes off.</summary>
    public static double OverThird(double canopyMm, double cutMm, double cutSdMm) =>
        NormalMath.Phi(((canopyMm * (1 - ThirdRule.Share)) - cutMm) / Math.Max(1e-6, cutSdMm));

    /// <summary>What it costs that the turf stands at a height at a day's end.</summary>
    public double Standing(double canopyMm, int t)
    {
        var low = p.WishMm - PlanLimits.BandUnderMm;
        var top = PlanLimits.BandTop * (Due(t) ? p.WishMm : Math.Max(p.WishMm, grid.LevelsMm[grid.Used]));
        return canopyMm < low ? p.Losses.OutOfBand
            : canopyMm <= top ? 0 : p.Losses.OutOfBand + (p.Losses.AboveBand * (canopyMm - top));
    }

    /// <summary>What it costs that a cut is kept off the wish.</summary>
    public double OffWish(double cutMm, int t)
    {
        var missed = p.WishBy is { } day && p.From.DayNumber + t == day.DayNumber ? p.Losses.WishMissed : 0;
        return ((p.Losses.AboveWish * (Due(t) ? 1 : BeforeDue)) + missed) * Math.Abs(cutMm - p.WishMm);
    }

    /// <summary>The same of turf that stands at a height on a day without a mowing.</summary>
    /// <remarks>Cut above what it is used to it is told by what it stands at, as no state holds the cut.</remarks>
    public double OffWish(int level, int phase, double canopyMm, int t) =>
        OffWish(phase >= PlanPhase.Raised ? Math.Max(grid.LevelsMm[level], CutOfStanding * canopyMm) : grid.LevelsMm[level], t);

    /// <summary>Mean of the green base when turf that stands at a height is cut to another, days from now.</summary>
    /// <remarks>
    /// It comes to its share of the height kept; between two mowings that is the middle of cut and canopy as far as there was time to follow.
    /// </remarks>
    public double BaseMm(double canopyMm, double cutMm, int t)
    {
        if (p.GreenBaseMm is not { } b) return 0;
        var grown = Math.Max(0, canopyMm - cutMm);
        var kept = cutMm + (grown / 2 * (1 - Math.Exp(-grown / growthMm / p.GreenBaseDays)));
        var stays = Math.Exp(-t / p.GreenBaseDays);
        return (stays * b.Mean) + ((1 - stays) * p.GreenBaseShare * kept);
    }

    public double Scalp(double canopyMm, double cutMm, int t)
    {
        if (p.GreenBaseMm is not { } b || cutMm >= canopyMm) return 0;
        return NormalMath.Phi((BaseMm(canopyMm, cutMm, t) - cutMm) / Math.Max(1e-6, double.Hypot(b.Sd, p.CutMm.Sd)));
    }

    /// <summary>Whether the lowest cut that the rules allow would scalp too often, so that a higher one spares the turf.</summary>
    public bool Spares(double canopyMm, double usedMm, int t) => Scalp(canopyMm, Math.Max(usedMm, RaisedCuts.LowestMm(canopyMm)), t) > PlanLimits.ScalpAtMost;

    /// <summary>What a mowing costs, and the height left that day: itself, share, scalp and wish; stress and a change of height apart.</summary>
    /// <param name="canopyMm">Standing height, mm.</param>
    /// <param name="cutMm">The cut, mm.</param>
    /// <param name="usedMm">What the turf is used to, mm. Where that would take more than a third, the rule says a third: a cut above that is charged no fewer odds of going over, or the way back would be drawn out.</param>
    /// <param name="t">The day.</param>
    public double Mowing(double canopyMm, double cutMm, double usedMm, int t) =>
        p.Losses.Mowing + Over(canopyMm, cutMm > usedMm ? Math.Min(cutMm, Math.Max(usedMm, RaisedCuts.LowestMm(canopyMm))) : cutMm, p.CanopySdMm, p.CutMm.Sd, p.Losses)
        + (p.Losses.ScalpGuard * p.Losses.Scalp * Scalp(canopyMm, cutMm, t)) + Standing(Math.Min(canopyMm, cutMm), t) + OffWish(cutMm, t);

    /// <summary>What taking a share of a stressed plant costs.</summary>
    public double Stressed(double stress, double canopyMm, double cutMm) =>
        p.Losses.StressedShare * stress * Math.Max(0, (canopyMm - cutMm) / canopyMm);

    /// <summary>What lies ahead after the last solved day.</summary>
    /// <remarks>
    /// Each mm that has grown is a part of the next mowing. Turf taller than a third over the wish costs the mowings that coming down by thirds takes, and the days
    /// too tall meanwhile. A used height above the wish costs the steps down and the days they take. Without these a plan waits for ever.
    /// </remarks>
    public double End(double canopyMm, int level, int phase)
    {
        const double DaysBetween = 2.5, UsualShare = 0.3;
        var wish = p.WishMm;
        var perMowing = wish * UsualShare / (1 - UsualShare);
        var loss = Math.Max(0, canopyMm - wish) / perMowing * p.Losses.Mowing;
        var top = PlanLimits.BandTop * wish;
        if (canopyMm > top)
        {
            var mowings = Math.Log(canopyMm / top) / Math.Log(1 / (1 - ThirdRule.Share));
            loss += mowings * (p.Losses.Mowing + (DaysBetween * (p.Losses.OutOfBand + (p.Losses.AboveBand * (canopyMm - top) / 2))));
        }
        if (phase >= PlanPhase.Raised) loss += p.Losses.HeightChange;
        var off = grid.LevelsMm[level] - wish;
        if (off > 0)
        {
            var steps = off / PlanLimits.LowerMm;
            var days = steps * PlanLimits.LowerApart * Math.Min(7, perMowing / growthMm);
            loss += (steps * p.Losses.HeightChange) + (p.Losses.AboveWish * off / 2 * days);
            // A wish due later still: what of the way down will not be done by then.
            if (p.WishBy is { } by && by.DayNumber - p.From.DayNumber - solvedDays is var left and >= 0 && days > left)
                loss += p.Losses.WishMissed * off * (days - left) / days;
        }
        return loss;
    }

    private bool Due(int t) => p.WishBy is not { } by || p.From.DayNumber + t >= by.DayNumber;
}
