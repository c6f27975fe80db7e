using Closemown.Estimation;

namespace Closemown.Turf;

/// <summary>What a day and a mowing cost on the grid.</summary>
internal sealed class PlanPrices
{
    private const double HalfShare = 0.5, OnceInTen = 1.2816;
    private readonly PlanProblem p;
    private readonly PlanGrid grid;
    private readonly double[] over;
    private readonly double growthMm;
    private readonly int solvedDays;

    public PlanPrices(PlanProblem p, PlanGrid grid, double meanGrowthMm, int solvedDays)
    {
        (this.p, this.grid, this.solvedDays) = (p, grid, solvedDays);
        growthMm = Math.Max(0.05, meanGrowthMm);
        over = new double[grid.Cuts * grid.Canopies];
        for (var k = 0; k < grid.Cuts; k++)
        {
            for (var i = 0; i < grid.Canopies; i++) over[(k * grid.Canopies) + i] = Over(grid.CanopyMm(i), grid.CutsMm[k], p.CanopySdMm, p.CutMm.Sd, p.Losses);
        }
    }

    /// <summary>Expected loss of a mowing that may take more than a third or a half.</summary>
    public static double Over(double canopyMm, double cutMm, double canopySdMm, double cutSdMm, PlanLosses losses)
    {
        var share = (canopyMm - cutMm) / canopyMm;
        var sd = Math.Max(1e-6, double.Hypot(cutSdMm / canopyMm, canopySdMm * cutMm / (canopyMm * canopyMm)));
        var z = (share - ThirdRule.Share) / sd;
        if (z < -6) return 0;
        var p = NormalMath.Phi(z);
        return (losses.OverThird * p) + (losses.ExcessShare * sd * ((z * p) + NormalMath.Density(z))) + (losses.OverHalf * NormalMath.Phi((share - HalfShare) / sd));
    }

    /// <summary>The probability that more than a third comes off.</summary>
    public static double OverThird(double canopyMm, double cutMm, double cutSdMm) =>
        NormalMath.Phi(((canopyMm * (1 - ThirdRule.Share)) - cutMm) / Math.Max(1e-6, cutSdMm));

    /// <summary>What it costs that the turf stands at a height at a day's end.</summary>
    public double Standing(double canopyMm, int t)
    {
        var due = p.WishBy is not { } by || p.From.DayNumber + t >= by.DayNumber;
        var low = p.WishMm - PlanLimits.BandUnderMm;
        var top = PlanLimits.BandTop * (due ? p.WishMm : Math.Max(p.WishMm, grid.CutsMm[grid.Last]));
        return canopyMm < low ? p.Losses.OutOfBand : canopyMm <= top ? 0 : p.Losses.OutOfBand + (p.Losses.AboveBand * (canopyMm - top));
    }

    /// <summary>What it costs that a cut is kept off the wish.</summary>
    public double OffWish(int cut, int t)
    {
        var due = p.WishBy is not { } by || p.From.DayNumber + t >= by.DayNumber;
        var off = Math.Abs(grid.CutsMm[cut] - p.WishMm);
        var missed = p.WishBy is { } day && p.From.DayNumber + t == day.DayNumber ? p.Losses.WishMissed : 0;
        return ((p.Losses.AboveWish * (due ? 1 : 0.25)) + missed) * off;
    }

    /// <summary>Mean of the green base when turf that stands at a height is cut to another, days from now.</summary>
    /// <remarks>It comes to its share of the height kept; between two mowings that is the middle of cut and canopy as far as there was time to follow.</remarks>
    public double BaseMm(double canopyMm, double cutMm, int t)
    {
        if (p.GreenBaseMm is not { } b) return 0;
        var grown = Math.Max(0, canopyMm - cutMm);
        var kept = cutMm + (grown / 2 * (1 - Math.Exp(-grown / growthMm / p.GreenBaseDays)));
        var stays = Math.Exp(-t / p.GreenBaseDays);
        return (stays * b.Mean) + ((1 - stays) * p.GreenBaseShare * kept);
    }

    /// <summary>The lowest cut that scalps once in ten at most, mm; 0 where nothing is known of the base.</summary>
    public double GreenDownToMm(double canopyMm, double cutMm, int t) =>
        p.GreenBaseMm is { } b ? BaseMm(canopyMm, cutMm, t) + (OnceInTen * double.Hypot(b.Sd, p.CutMm.Sd)) : 0;

    public double Scalp(double canopyMm, double cutMm, int t)
    {
        if (p.GreenBaseMm is not { } b || cutMm >= canopyMm) return 0;
        return NormalMath.Phi((BaseMm(canopyMm, cutMm, t) - cutMm) / Math.Max(1e-6, double.Hypot(b.Sd, p.CutMm.Sd)));
    }

    /// <summary>Fills what a mowing at each cut costs at each standing height on a day: itself, share, scalp, and the height left.</summary>
    public void FillMowing(int t, double[] into)
    {
        for (var k = 0; k < grid.Cuts; k++)
        {
            var cut = grid.CutsMm[k];
            for (var i = 0; i < grid.Canopies; i++)
            {
                var canopy = grid.CanopyMm(i);
                into[(k * grid.Canopies) + i] = p.Losses.Mowing + over[(k * grid.Canopies) + i] + (p.Losses.ScalpGuard * p.Losses.Scalp * Scalp(canopy, cut, t)) + Standing(Math.Min(canopy, cut), t) + OffWish(k, t);
            }
        }
    }

    public double OverIn(double canopyMm, int cut) => grid.In(over, cut * grid.Canopies, canopyMm);

    /// <summary>What lies ahead after the last solved day.</summary>
    /// <remarks>
    /// Each mm that has grown is a part of the next mowing. Turf taller than a third over the wish costs the mowings that coming down by thirds takes, and the days
    /// too tall meanwhile. A cut above the wish costs the steps down and the days they take. Without these a plan waits for ever.
    /// </remarks>
    public double End(double canopyMm, int cut)
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
        var off = grid.CutsMm[cut] - wish;
        if (off > 0)
        {
            var steps = off / PlanLimits.LowerMm;
            var days = steps * PlanLimits.LowerApart * Math.Min(7, perMowing / growthMm);
            loss += (steps * p.Losses.HeightChange) + (p.Losses.AboveWish * off / 2 * days);
            // A wish due later still: what of the way down will not be done by then.
            if (p.WishBy is { } by && by.DayNumber - p.From.DayNumber - solvedDays is var left and >= 0 && days > left) loss += p.Losses.WishMissed * off * (days - left) / days;
        }
        return loss;
    }
}
