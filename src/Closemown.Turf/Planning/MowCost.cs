using Closemown.Estimation;

namespace Closemown.Turf;

/// <summary>What one mowing costs besides what it leaves: the share near a third charged by the probability of going over, not by yes or no.</summary>
internal static class MowCost
{
    /// <summary>How well canopy and cut are known on the day, mm.</summary>
    public const double KnownMm = 0.25;

    private const double LeastMm = 0.5;

    /// <summary>Expected cost of the leaf taken.</summary>
    /// <param name="losses">What things cost.</param>
    /// <param name="canopyMm">Standing height, mm.</param>
    /// <param name="cutMm">Cut, mm.</param>
    /// <param name="knownMm">Spread of both together, mm.</param>
    public static double Of(PlanLosses losses, double canopyMm, double cutMm, double knownMm = KnownMm)
    {
        var canopy = Math.Max(LeastMm, canopyMm);
        double share = (canopy - cutMm) / canopy, sd = knownMm / canopy;
        var third = (share - PlanRules.AskShare) / sd;
        var half = (share - 0.5) / sd;
        var over = NormalMath.Phi(third);
        var density = Math.Exp(-third * third / 2) / Math.Sqrt(2 * Math.PI);
        var excess = sd * (density + (third * over));
        // At half the first form has come to 4: what is short of the price of half is added.
        var more = Math.Max(0, losses.OverHalf - losses.OverThird - (losses.OverThirdPerShare * (0.5 - PlanRules.AskShare)));
        return (losses.OverThird * over) + (losses.OverThirdPerShare * excess) + (more * NormalMath.Phi(half));
    }

    /// <summary>What it cost in truth, canopy and cut known.</summary>
    public static double Sure(PlanLosses losses, double canopyMm, double cutMm)
    {
        var share = canopyMm <= LeastMm ? 0 : (canopyMm - cutMm) / canopyMm;
        if (share <= PlanRules.AskShare) return 0;
        var over = losses.OverThird + (losses.OverThirdPerShare * (share - PlanRules.AskShare));
        return share > 0.5 ? Math.Max(losses.OverHalf, over) : over;
    }
}
